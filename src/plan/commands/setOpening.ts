import type { Outcome } from '../../base/fault.ts';
import type { Got, Opening } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { admitted } from './admitted.ts';
import { changed } from './changed.ts';
import { forgetting } from './forgetting.ts';
import { mapped, mappedList } from './mapped.ts';
import { withStructure } from './withStructure.ts';

/**
 * Moves an opening, on its wall or to another, or changes what it is.
 * @param on  id of its structure
 * @param how how what is new was got; left out (a drag), the mark stays
 * @returns   refused where it does not fit, or a camera on the wall would then be on it
 * @throws    RangeError where there is no such opening, or a number is not finite
 */
export function setOpening(
  plan: Plan,
  on: string,
  id: string,
  change: Partial<Omit<Opening, 'id'>>,
  how?: Got,
): Outcome<Plan> {
  const next = withStructure(plan, on, (structure) => {
    if (!('openings' in structure) || !structure.openings.some((opening) => opening.id === id))
      throw new RangeError(`${on} has no opening ${id}`);
    const openings = mappedList(structure.openings, (opening) =>
      opening.id === id
        ? changed(opening, { ...change, ...(how === undefined ? {} : { got: how }) })
        : opening,
    );
    return openings === structure.openings ? structure : { ...structure, openings };
  });
  return admitted(plan, next);
}

/**
 * Takes an opening out of its wall; no situation speaks of it any more.
 * @throws RangeError where there is no such opening
 */
export function removeOpening(plan: Plan, on: string, id: string): Plan {
  const next = withStructure(plan, on, (structure) => {
    if (!('openings' in structure) || !structure.openings.some((opening) => opening.id === id))
      throw new RangeError(`${on} has no opening ${id}`);
    return { ...structure, openings: structure.openings.filter((opening) => opening.id !== id) };
  });
  return { ...next, situations: mapped(plan.situations, (situation) => forgetting(situation, null, [id])) };
}
