import { createHistory, historyOf, trailOf, type History } from '../plan/history.ts';
import { PLAN_VERSION } from '../plan/plan.ts';
import { stepFrom } from '../plan/trail.ts';
import { planText } from '../plan/write.ts';
import { readPlan } from '../plan/read.ts';
import type { Plan } from '../plan/plan.ts';
import type { Editor } from './editor.ts';
import { keptFrom } from './shelf.ts';
import type { Kept, KeptStep, Shelf } from './shelf.ts';
import type { LetGo, Tabs } from './tabs.ts';

export interface Keeping {
  /** Opens another plan. The former is kept first; a kept plan of the same id and other content is set aside, not lost. */
  open(plan: Plan, history?: History): Promise<void>;
  /** Keeps now what is not kept yet. */
  flush(): Promise<void>;
  /** Keeps at once, whatever is being written still: the page goes away and nothing is awaited any more. */
  leave(): void;
  /** Takes the right to write from the other tab, with what that tab kept last. */
  editHere(): Promise<void>;
}

/** A plan that takes longer than this to write, ms, is written after a pause, so that work goes on. */
const SLOW = 30;
const PAUSE = 1500;

/** Keeps the editor's plan on the shelf as each step ends, while this tab has the right to write it. */
export function keepPlan(editor: Editor, shelf: Shelf, tabs: Tabs, now: () => number): Keeping {
  const { store } = editor;
  let kept: Plan = store.getState().plan;
  let writing: Promise<void> | null = null;
  let letGo: LetGo | null = null;
  let claimed: string | null = null;
  let claiming: Promise<void> = Promise.resolve();
  let cost = 0;
  let pause: ReturnType<typeof setTimeout> | undefined;

  const isKept = () => {
    return store.getState().readOnly || editor.history().plan === kept;
  };

  // The steps that lie on the shelf, by what they changed: a step undone and done again keeps that.
  let shelved = new WeakSet<object>();

  const put = async () => {
    const history = editor.history();
    const { plan } = history;
    kept = plan;
    const at = now();
    const { steps, at: done } = trailOf(history);
    const news: KeptStep[] = steps.flatMap((step, number) =>
      shelved.has(step.changes) ? [] : [{ number, step }],
    );
    for (const { step } of news) shelved.add(step.changes);
    try {
      const text = planText(plan);
      cost = now() - at;
      const trail = { version: PLAN_VERSION, length: steps.length, at: done };
      await Promise.all([
        shelf.put({ key: plan.id, name: plan.name, at, text, trail }, news),
        shelf.noteOpen(plan.id),
      ]);
      store.setState({ kept: { at, trouble: null } });
    } catch (error) {
      shelved = new WeakSet();
      store.setState(({ kept: { at: last } }) => ({ kept: { at: last, trouble: troubleWords(error) } }));
    }
  };

  const write = async () => {
    for (;;) {
      await claiming;
      if (isKept()) return;
      await put();
    }
  };

  const flush = (): Promise<void> => {
    clearTimeout(pause);
    writing ??= write().finally(() => {
      writing = null;
    });
    return writing;
  };

  const yielded = () => {
    letGo = null;
    store.setState({ readOnly: true });
    editor.say('Edited in another tab from now on. Read here, or edit here instead.');
  };

  const claim = async (plan: string) => {
    letGo?.();
    letGo = null;
    claimed = plan;
    const right = await tabs.claim(plan, yielded);
    // Meanwhile another plan may have been opened.
    if (claimed !== plan) return right?.();
    letGo = right;
    if (right) {
      store.setState({ readOnly: false });
      return;
    }
    const held = keptFrom(await shelf.take(plan).catch(() => null));
    store.setState({ readOnly: true });
    const since = held ? ` since ${clock(held.at)}` : '';
    editor.say(`Open in another tab${since}. Read here, or edit here instead.`);
  };

  store.subscribe((state, before) => {
    if (state.plan.id !== before.plan.id) claiming = claim(state.plan.id);
    if (state.gesturing || isKept()) return;
    clearTimeout(pause);
    if (cost < SLOW) void flush();
    else pause = setTimeout(() => void flush(), PAUSE);
  });
  tabs.asked((plan) => {
    if (plan !== claimed || !letGo) return;
    const right = letGo;
    void flush().then(() => {
      right();
      yielded();
    });
  });
  claiming = claim(kept.id);

  return {
    flush,
    leave: () => {
      if (letGo && !isKept()) void put();
    },
    open: async (plan, history) => {
      await flush();
      const former = keptFrom(await shelf.take(plan.id).catch(() => null));
      if (former && former.text !== planText(plan)) await setAside(shelf, former).catch(() => undefined);
      shelved = new WeakSet();
      editor.open(plan, history);
    },
    editHere: async () => {
      const { plan } = store.getState();
      letGo = await tabs.seize(plan.id, yielded);
      const newest = keptFrom(await shelf.take(plan.id).catch(() => null));
      const read = newest && newest.text !== planText(plan) ? readPlan(newest.text) : null;
      if (read?.ok) {
        kept = read.value;
        editor.open(read.value);
      }
      store.setState({ readOnly: false });
      editor.say('This tab edits the plan now.');
    },
  };
}

/** The plan that was open last, or why it cannot be shown; null where none was. */
export async function restore(
  shelf: Shelf,
): Promise<{ history: History; at: number } | { unreadable: Kept } | null> {
  const key = await shelf.lastOpen();
  const kept = typeof key === 'string' ? keptFrom(await shelf.take(key)) : null;
  if (!kept) return null;
  const read = readPlan(kept.text);
  if (read.ok) return { history: await historyKept(shelf, kept, read.value), at: kept.at };
  // Out of the way of what is kept next under this id.
  await setAside(shelf, kept);
  return { unreadable: kept };
}

/** The steps that led to a kept plan; where they cannot be read, history begins with the plan. */
export async function historyKept(shelf: Shelf, { key, trail }: Kept, plan: Plan): Promise<History> {
  if (trail?.version !== PLAN_VERSION) return createHistory(plan);
  const held = (await shelf.steps(key).catch(() => [])).map(stepFrom);
  const steps = held.filter((step) => step !== null);
  const isWhole = steps.length === held.length && held.length === trail.length && trail.at <= trail.length;
  return isWhole ? historyOf(plan, steps, trail.at) : createHistory(plan);
}

/** What the device keeps, newest first. */
export async function keptPlans(shelf: Shelf): Promise<readonly Kept[]> {
  const held = (await shelf.list()).map(keptFrom).filter((kept) => kept !== null);
  return held.toSorted((a, b) => b.at - a.at);
}

const setAside = (shelf: Shelf, kept: Kept): Promise<void> =>
  shelf.put({ ...kept, key: `${kept.key} of ${new Date(kept.at).toISOString()}` });

/** 09:42 on the clock of this place. */
const clock = (at: number): string =>
  new Date(at).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

function troubleWords(error: unknown): string {
  if (error instanceof DOMException && error.name === 'QuotaExceededError')
    return 'No room to keep the last change on this device. Save the plan to a file.';
  return 'The last change could not be kept on this device. Save the plan to a file.';
}
