import type { Ground } from '../../model/ground.ts';
import type { Plan } from '../plan.ts';
import { groundFaults } from '../siteFaults.ts';

/**
 * Replaces the ground.
 * @throws RangeError where a grid has not as many heights as cells
 */
export function setGround(plan: Plan, ground: Ground): Plan {
  if (ground === plan.ground) return plan;
  const [fault] = groundFaults(ground);
  if (fault) throw new RangeError(`this ground cannot be read: ${fault.code}, ${fault.given}`);
  return { ...plan, ground };
}
