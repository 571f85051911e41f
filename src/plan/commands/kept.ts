import type { Outcome } from '../../base/fault.ts';
import type { Plan } from '../plan.ts';

/** The plan that came of a command; the plan as it was where the command was refused. */
export const kept = (plan: Plan, outcome: Outcome<Plan>): Plan => (outcome.ok ? outcome.value : plan);
