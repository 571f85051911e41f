import { createHistory, historyOf, redo, trailOf, undo, type History } from '../plan/history.ts';
import { PLAN_VERSION } from '../plan/plan.ts';
import { stepFrom } from '../plan/trail.ts';
import { planText } from '../plan/write.ts';
import { readPlan } from '../plan/read.ts';
import type { Plan } from '../plan/plan.ts';
import type { Editor } from './editor.ts';
import { keptFrom, trailFrom } from './shelf.ts';
import type { Kept, KeptStep, Shelf, Trail } from './shelf.ts';
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
  // Where on the trail the text on the shelf stands.
  let written: { readonly plan: string; readonly at: number } | null = null;
  let noted: Plan | null = null;

  // Each step is handed to the device in the very task that ends it, without waiting for the one before: a tab that is
  // killed then loses no finished step.
  const pending = new Set<Promise<void>>();
  const put = (): Promise<void> => {
    const going = putNow().finally(() => pending.delete(going));
    pending.add(going);
    return going;
  };

  /** The trail as it is now, and the steps of it that are not on the shelf yet. */
  const newsOf = (history: History): { trail: Trail; news: readonly KeptStep[] } => {
    const { steps, at } = trailOf(history);
    const news = steps.flatMap((step, number) => (shelved.has(step.changes) ? [] : [{ number, step }]));
    return { trail: { version: PLAN_VERSION, length: steps.length, at }, news };
  };

  /** Keeps the steps alone; false where the text on the shelf does not lie on their trail, so that it is due as well. */
  const note = async (): Promise<boolean> => {
    const history = editor.history();
    const { trail, news } = newsOf(history);
    const first = news[0]?.number ?? Infinity;
    if (written === null || written.plan !== history.plan.id || first < written.at) return false;
    noted = history.plan;
    for (const { step } of news) shelved.add(step.changes);
    await shelf.note(history.plan.id, trail, news);
    return true;
  };

  const putNow = async () => {
    const history = editor.history();
    const { plan } = history;
    kept = plan;
    const at = now();
    const { trail, news } = newsOf(history);
    for (const { step } of news) shelved.add(step.changes);
    try {
      const text = planText(plan);
      cost = now() - at;
      written = { plan: plan.id, at: trail.at };
      await Promise.all([
        shelf.put({ key: plan.id, name: plan.name, at, text, trail }, news),
        shelf.noteOpen(plan.id),
      ]);
      store.setState({ kept: { at, trouble: null } });
    } catch (error) {
      shelved = new WeakSet();
      written = null;
      store.setState(({ kept: { at: last } }) => ({ kept: { at: last, trouble: troubleWords(error) } }));
    }
  };

  const write = async () => {
    for (;;) {
      await claiming;
      await Promise.all(pending);
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
    if (!letGo) return void flush();
    if (cost < SLOW) return void put();
    pause = setTimeout(() => void flush(), PAUSE);
    if (editor.history().plan !== noted)
      note().then(
        (isOnTrail) => (isOnTrail ? undefined : put()),
        () => put(),
      );
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
      written = null;
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
  const end = trailFrom(await shelf.trail(key).catch(() => null));
  if (trail?.version !== PLAN_VERSION || end?.version !== PLAN_VERSION) return createHistory(plan);
  const held = (await shelf.steps(key).catch(() => [])).map(stepFrom);
  const steps = held.filter((step) => step !== null);
  const isWhole = steps.length === held.length && held.length === end.length && end.at <= end.length;
  if (!isWhole || trail.at > end.length) return createHistory(plan);
  if (trail.at === end.at) return historyOf(plan, steps, end.at);
  // The text was not written any more: the steps lead from it to where the person was.
  let now = historyOf(plan, steps, trail.at);
  while (trailOf(now).at < end.at) now = redo(now);
  while (trailOf(now).at > end.at) now = undo(now);
  const read = readPlan(planText(now.plan));
  return read.ok ? historyOf(read.value, steps, end.at) : createHistory(plan);
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
