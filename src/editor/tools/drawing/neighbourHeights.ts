import type { Plan } from '../../../plan/plan.ts';
import type { Selected } from '../../editor.ts';
import { shapeOf } from '../../grips/shapeOf.ts';
import type { Candidate } from '../snap.ts';

const REACH = 6;

/** Heights of other things above a level, for snapping: "as high as Garage". */
export function neighbourHeights(plan: Plan, thing: Selected, level: number): readonly Candidate[] {
  const own = 'id' in thing ? thing.id : null;
  return Object.values(plan.structures).flatMap((structure) => {
    if (structure.id === own || structure.hidden) return [];
    const shape = shapeOf(structure);
    return shape ? [{ value: shape.top - level, pixels: REACH, name: `as high as ${structure.name}` }] : [];
  });
}
