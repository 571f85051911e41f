import type { Ground } from '../../model/ground.ts';
import type { Plan } from '../plan.ts';
import { groundFaults } from '../siteFaults.ts';

/**
 * Replaces the ground.
 * @throws RangeError where no surface lies through the heights given; `groundFaults` tells beforehand
 */
export function setGround(plan: Plan, ground: Ground): Plan {
  if (ground === plan.ground) return plan;
  const [fault] = groundFaults(ground);
  if (fault) throw new RangeError(`no ground lies through these heights: ${fault.code}`);
  return { ...plan, ground };
}
