import type { Patch, Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withRecord } from './withRecord.ts';

/**
 * Changes a patch: its name, its outline, the height of its plane, how steeply and which way it rises.
 * @throws RangeError on an unknown patch, or a number that is not finite
 */
export function setPatch(plan: Plan, id: string, change: Partial<Omit<Patch, 'id'>>): Plan {
  const patches = withRecord(plan.patches, id, 'patch', (patch) => changed(patch, change));
  return patches === plan.patches ? plan : { ...plan, patches };
}
