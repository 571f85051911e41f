import { groundHeight } from '../../model/ground.ts';
import type { Ring } from '../../model/structure.ts';
import type { Patch, Plan } from '../plan.ts';
import { freshId, takenIds } from './freshId.ts';

/** A patch for this plan that is not in it yet, level with the ground until it is tilted: P1, P2 … */
export function newPatch(plan: Plan, outline: Ring): Patch {
  const names = Object.values(plan.patches).map(({ name }) => name);
  const id = freshId(new Set([...takenIds(plan), ...names]), 'P');
  return { id, name: id, outline, base: groundHeight(plan.ground), pitch: 0, rises: 0, got: 'guessed' };
}

/**
 * Puts a patch into the plan, last in order.
 * @throws RangeError where its id is taken
 */
export function addPatch(plan: Plan, patch: Patch): Plan {
  if (takenIds(plan).has(patch.id)) throw new RangeError(`the id ${patch.id} is taken`);
  return {
    ...plan,
    patches: { ...plan.patches, [patch.id]: patch },
    patchOrder: [...plan.patchOrder, patch.id],
  };
}
