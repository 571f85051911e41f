import type { Plan, Situation } from '../plan.ts';
import { asDrawn } from '../situations.ts';
import { freshId, takenIds } from './freshId.ts';

/** A situation for this plan that is not in it yet: everything as it is drawn, by day. */
export const newSituation = (plan: Plan, name: string): Situation => ({
  ...asDrawn,
  id: freshId(takenIds(plan), 'S'),
  name,
});

/**
 * Puts a situation into the plan, last in order.
 * @throws RangeError where its id is taken
 */
export function addSituation(plan: Plan, situation: Situation): Plan {
  if (takenIds(plan).has(situation.id)) throw new RangeError(`the id ${situation.id} is taken`);
  return {
    ...plan,
    situations: { ...plan.situations, [situation.id]: situation },
    situationOrder: [...plan.situationOrder, situation.id],
  };
}
