import type { Structure } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';

/**
 * The plan with one structure changed; the same plan where the change leaves it the same object.
 * @throws RangeError where the plan has no such structure
 */
export function withStructure(plan: Plan, id: string, change: (structure: Structure) => Structure): Plan {
  const structure = Object.hasOwn(plan.structures, id) ? plan.structures[id] : undefined;
  if (!structure) throw new RangeError(`the plan has no structure ${id}`);
  const next = change(structure);
  return next === structure ? plan : { ...plan, structures: { ...plan.structures, [id]: next } };
}
