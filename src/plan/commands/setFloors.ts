import type { Outcome } from '../../base/fault.ts';
import type { Floor } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { admitted } from './admitted.ts';
import { changed } from './changed.ts';
import { cleanName } from './renameThing.ts';
import { withStructure } from './withStructure.ts';

/**
 * Says what floors a building has, kept from the lowest up: levels above its base and ceilings above their floor, m.
 * @returns refused where a level or ceiling is beyond any building, or a name is empty
 * @throws  RangeError where there is no such building
 */
export function setFloors(plan: Plan, id: string, floors: readonly Floor[]): Outcome<Plan> {
  const next = withStructure(plan, id, (structure) => {
    if (structure.kind !== 'building') throw new RangeError(`${id} is no building`);
    const rising = floors
      .map((floor) => ({ ...floor, name: cleanName(floor.name) }))
      .toSorted((a, b) => a.level - b.level);
    const isSame = JSON.stringify(rising) === JSON.stringify(structure.floors);
    return isSame ? structure : changed(structure, { floors: rising });
  });
  return admitted(plan, next);
}
