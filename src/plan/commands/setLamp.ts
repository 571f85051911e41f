import type { Lamp, Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withRecord } from './withRecord.ts';

/**
 * Moves a lamp, or gives it another name, height or light.
 * @throws RangeError on an unknown lamp, or a number that is not finite
 */
export function setLamp(plan: Plan, id: string, change: Partial<Omit<Lamp, 'id'>>): Plan {
  const lamps = withRecord(plan.lamps, id, 'lamp', (lamp) => changed(lamp, change));
  return lamps === plan.lamps ? plan : { ...plan, lamps };
}
