import type { Fault, Outcome } from '../../base/fault.ts';
import { admitted } from '../../plan/commands/admitted.ts';
import { faultText } from '../../plan/faultText.ts';
import type { Plan } from '../../plan/plan.ts';

/** A change of the plan that may refuse by itself. */
export type Change = (plan: Plan) => Plan | Outcome<Plan>;

/** A plan after a change, or why it cannot be: the first reason, and in words. */
export type Attempt =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly words: string; readonly fault: Fault | null };

/** Tries a change. What no longer fits stops it, as does a number that no file could hold. */
export function attempt(before: Plan, change: Change): Attempt {
  const result = change(before);
  const outcome = 'ok' in result ? result : admitted(before, result);
  if (outcome.ok) return { ok: true, plan: outcome.value };
  const [fault = null] = outcome.faults;
  // Where it would lie in a file is nothing to a person at the Model.
  return { ok: false, words: fault ? faultText({ ...fault, path: [] }) : 'This does not fit.', fault };
}

/** The corner that a crossing or touching shape has at fault, counted from 0; null where it has none. */
export function cornerAtFault({ code, path }: Fault): number | null {
  const corner = path.at(-1);
  return /\.(?:crosses|touches)$/.test(code) && typeof corner === 'number' ? corner : null;
}
