import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read.ts';
import { planText } from '../plan/write.ts';
import type { Editor } from './editor.ts';
import { versionFrom, type KeptVersion, type Shelf } from './shelf.ts';

/** A version is kept by itself when a plan is changed so long after the last one, ms. */
const EVERY = 10 * 60_000;
/** So many of those are kept; what the person kept by hand stays. */
const MOST = 30;

/** Versions of plans to go back to. */
export interface Versions {
  /** Keeps the plan as it is under a name. */
  keep(name: string): Promise<void>;
  /** Those of the open plan, newest first. */
  list(): Promise<readonly KeptVersion[]>;
  remove(version: KeptVersion): Promise<void>;
  /** Goes back to one, as a step like any other: undo takes it back. */
  goBack(version: KeptVersion): void;
  dispose(): void;
}

/** Keeps the plan as it was before the first change of a sitting, and again every ten minutes of work. */
export function keepVersions(editor: Editor, shelf: Shelf, now: () => number): Versions {
  const { store } = editor;
  let last = { plan: '', at: -Infinity };

  const list = async (plan: string) => {
    const held = (await shelf.versions(plan)).map(versionFrom).filter((version) => version !== null);
    return held.toSorted((a, b) => b.at - a.at);
  };

  const put = async (plan: Plan, name: string, byHand: boolean) => {
    const at = now();
    const key = `${plan.id} ${at}`;
    await shelf.putVersion({ key, plan: plan.id, name, at, byHand, text: planText(plan) });
    const old = (await list(plan.id)).filter((version) => !version.byHand).slice(MOST);
    await Promise.all(old.map((version) => shelf.removeVersion(version.key)));
  };

  const dispose = store.subscribe(({ plan, gesturing, readOnly, undoName }, before) => {
    if (plan === before.plan || plan.id !== before.plan.id || gesturing || before.gesturing || readOnly)
      return;
    const at = now();
    if (last.plan === plan.id && at - last.at < EVERY) return;
    last = { plan: plan.id, at };
    // Whoever keeps plans says so where the device has no room; a version more or less is no loss.
    put(before.plan, `Before: ${undoName ?? 'the last change'}`, false).catch(() => undefined);
  });

  return {
    keep: (name) => put(store.getState().plan, name, true),
    list: () => list(store.getState().plan.id),
    remove: ({ key }) => shelf.removeVersion(key),
    goBack: ({ name, text }) => {
      const read = readPlan(text);
      if (!read.ok) return editor.say(`“${name}” cannot be read. The plan is as it was.`, read.faults);
      editor.run(`Go back to ${name}`, (plan) => ({ ...read.value, id: plan.id }));
      editor.say(`The plan is as in “${name}”. Undo brings back what was here.`);
    },
    dispose,
  };
}
