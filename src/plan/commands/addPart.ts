import type { Structure } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { idStem, type Added } from './addStructure.ts';
import { freshId, takenIds } from './freshId.ts';
import { freshName, takenNames } from './freshName.ts';
import { withStructure } from './withStructure.ts';

/**
 * A structure with a part more, which gets a free id and the name wanted or the next free one.
 * @throws RangeError where the plan has no such structure
 */
export function addPart(
  plan: Plan,
  on: string,
  wanted: string,
  add: (structure: Structure, named: { readonly id: string; readonly name: string }) => Structure,
): Added {
  const name = freshName(wanted, takenNames(plan));
  const id = freshId(takenIds(plan), idStem(name));
  return { plan: withStructure(plan, on, (structure) => add(structure, { id, name })), id };
}
