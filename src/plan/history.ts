import { changesBetween, withChanges, type Change } from './changes.ts';
import type { Plan } from './plan.ts';

/** What a step is called and what it changed. */
export interface StepMade {
  readonly name: string;
  readonly changes: readonly Change[];
}

/** One step, and the steps before it; of undone ones, the step that was undone before. */
interface Step extends StepMade {
  readonly below: Step | null;
}

/**
 * A plan and every step that led to it, as many as there were. A value: each function returns another.
 * A step keeps only the records it touched, so that thousands of steps on a plan of thousands of structures are small.
 */
export interface History {
  readonly plan: Plan;
  readonly done: Step | null;
  readonly undone: Step | null;
}

/** A history that begins with a plan. */
export const createHistory = (plan: Plan): History => ({ plan, done: null, undone: null });

/** Adds a step. A plan that is the same object is no step; a new step ends what could be redone. */
export function record(history: History, name: string, next: Plan): History {
  if (next === history.plan) return history;
  const changes = changesBetween(history.plan, next);
  return { plan: next, done: { name, changes, below: history.done }, undone: null };
}

/** Takes the last step back; the same history where there is none. Records come back as the very objects they were. */
export function undo({ plan, done, undone }: History): History {
  if (!done) return { plan, done, undone };
  const { name, changes, below } = done;
  return {
    plan: withChanges(plan, changes, 'before'),
    done: below,
    undone: { name, changes, below: undone },
  };
}

/** Does the last undone step again; the same history where there is none. */
export function redo({ plan, done, undone }: History): History {
  if (!undone) return { plan, done, undone };
  const { name, changes, below } = undone;
  return { plan: withChanges(plan, changes, 'after'), done: { name, changes, below: done }, undone: below };
}

/** Every step in the order made, undone ones last, and how many of them are done. */
export function trailOf({ done, undone }: History): {
  readonly steps: readonly StepMade[];
  readonly at: number;
} {
  const before = chain(done).toReversed();
  return { steps: [...before, ...chain(undone)], at: before.length };
}

function chain(top: Step | null): StepMade[] {
  const steps: StepMade[] = [];
  for (let step = top; step; step = step.below) steps.push({ name: step.name, changes: step.changes });
  return steps;
}

/** The history of a plan to which the first `at` of some steps have led. */
export function historyOf(plan: Plan, steps: readonly StepMade[], at: number): History {
  const under = (below: Step | null, { name, changes }: StepMade): Step => ({ name, changes, below });
  return {
    plan,
    done: steps.slice(0, at).reduce(under, null),
    undone: steps.slice(at).reduceRight(under, null),
  };
}

/** Names of the steps that undo and redo would take; null where there is none. */
export const stepNames = ({
  done,
  undone,
}: History): { readonly undo: string | null; readonly redo: string | null } => ({
  undo: done?.name ?? null,
  redo: undone?.name ?? null,
});
