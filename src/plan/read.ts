import { refuse, type Outcome } from '../base/fault.ts';
import { checkPlan } from './checkPlan.ts';
import { drawingFaults } from './drawing.ts';
import { jsonFault } from './jsonFault.ts';
import { migrate } from './migrations/migrate.ts';
import type { Plan } from './plan.ts';

/**
 * The plan in a file's text, of this version or an older one.
 * @returns the plan and notes on what was mended, or every fault found; nothing is thrown for any text
 */
export function readPlan(text: string): Outcome<Plan> {
  let file: unknown;
  try {
    // Some editors begin a file with a byte order mark.
    file = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return refuse(jsonFault(text.replace(/^\uFEFF/, '')));
  }
  return planFrom(file);
}

/** The plan in parsed JSON: brought up to this version, then checked; what it draws must be such as can be built. */
export function planFrom(file: unknown): Outcome<Plan> {
  const draft = migrate(file);
  if (!draft.ok) return draft;
  const checked = checkPlan(draft.value);
  if (!checked.ok) return checked;
  const faults = drawingFaults(checked.value);
  return faults.length > 0 ? refuse(...faults) : checked;
}
