import type { Vec2 } from '../../../base/vector.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Selected } from '../../editor.ts';
import { edgesOf, groundCornersOf } from '../../grips/shapeOf.ts';
import { shapeIn } from '../../grips/shapeIn.ts';
import type { Body } from '../../shaping/bodySnap.ts';
import { cornersSelected, expanded } from '../../shaping/selection.ts';

/** What of a selection snaps when it is moved. */
export function bodyOf(plan: Plan, selection: readonly Selected[]): Body {
  const edges = expanded(plan, selection).flatMap((thing): (readonly [Vec2, Vec2])[] => {
    const id = thing.kind === 'boundary' ? 'boundary' : 'id' in thing ? thing.id : '';
    const found = shapeIn(plan, id);
    if (found) return edgesOf(found.shape);
    const structure = thing.kind === 'structure' ? plan.structures[thing.id] : undefined;
    return structure ? edgesOf({ corners: groundCornersOf(structure), closed: true }) : [];
  });
  return { corners: cornersSelected(plan, selection), edges };
}

export const movedBody = ({ corners, edges }: Body, [dx, dy]: Vec2): Body => {
  const go = ([x, y]: Vec2): Vec2 => [x + dx, y + dy];
  return { corners: corners.map(go), edges: edges.map(([a, b]) => [go(a), go(b)]) };
};

/** The plan without a selection, which does not attract itself. Cameras that hang on it go along. */
export function plainWithout(plan: Plan, selection: readonly Selected[]): Plan {
  const gone = new Set(expanded(plan, selection).map((thing) => ('id' in thing ? thing.id : thing.kind)));
  const rest = <T>(records: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
    Object.fromEntries(Object.entries(records).filter(([id]) => !gone.has(id)));
  return {
    ...plan,
    structures: rest(plan.structures),
    cameras: rest(plan.cameras),
    patches: rest(plan.patches),
    boundary: gone.has('boundary') ? null : plan.boundary,
  };
}
