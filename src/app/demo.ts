import demo from '../../shared/plans/demo.plan.json?raw';
import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read.ts';

/** The sample: an invented cottage with three cameras. */
export function demoPlan(): Plan {
  const read = readPlan(demo);
  if (!read.ok)
    throw new Error(`the sample cannot be read: ${read.faults.map(({ code }) => code).join(', ')}`);
  return read.value;
}
