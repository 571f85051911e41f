import { accept, type Outcome } from '../../base/fault.ts';
import type { Spot } from '../../model/ground.ts';
import type { Plan } from '../plan.ts';
import { admitted } from './admitted.ts';

/**
 * Says how high the ground is at places. With fewer than three it stays flat at their mean; with none it is flat at 0.
 * @returns refused where a height or place is beyond any site
 */
export function setSpots(plan: Plan, spots: readonly Spot[]): Outcome<Plan> {
  const { ground } = plan;
  if (spots.length === 0)
    return ground.kind === 'spots'
      ? admitted(plan, { ...plan, ground: { kind: 'flat', height: 0 } })
      : accept(plan);
  if (ground.kind === 'spots' && JSON.stringify(ground.spots) === JSON.stringify(spots)) return accept(plan);
  return admitted(plan, { ...plan, ground: { kind: 'spots', spots } });
}
