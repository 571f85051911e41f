import type { Plan, PlanSettings } from '../plan.ts';
import { changed } from './changed.ts';

/**
 * Changes what the plan is judged by.
 * @throws RangeError on a number that is not finite
 */
export function setSettings(plan: Plan, change: Partial<PlanSettings>): Plan {
  const settings = changed(plan.settings, change);
  return settings === plan.settings ? plan : { ...plan, settings };
}
