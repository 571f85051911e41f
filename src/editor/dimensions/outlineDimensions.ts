import type { Vec2, Vec3 } from '../../base/vector.ts';
import { span } from '../../model/segment.ts';
import { moveThings } from '../../plan/commands/moveThings.ts';
import { setEdgeLength } from '../../plan/commands/setEdgeLength.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { shapeIn } from '../grips/shapeIn.ts';
import { edgesOf } from '../grips/shapeOf.ts';
import { cornersSelected, thingsOf } from '../shaping/selection.ts';
import { dimension, type Dimension } from './dimension.ts';

/** How far east and north of the site's origin the first corner drawn is, or what stands at a place. */
export function positionDimensions(plan: Plan, thing: Selected): readonly Dimension[] {
  const structure = thing.kind === 'structure' ? plan.structures[thing.id] : undefined;
  const at = structure && 'at' in structure ? structure.at : cornersSelected(plan, [thing])[0];
  const id = 'id' in thing ? thing.id : '';
  if (!at) return [];
  const z = shapeIn(plan, id)?.shape.base ?? (structure && 'base' in structure ? structure.base : 0);
  const place = (axis: 0 | 1, label: string, from: Vec2): Dimension =>
    dimension({
      key: axis === 0 ? 'east' : 'north',
      label,
      measure: 'length',
      value: at[axis],
      bounds: LIMITS.coordinate,
      between: [
        [from[0], from[1], z],
        [at[0], at[1], z],
      ],
      change: (value) => (now) => {
        const by = rounded(value - at[axis]);
        return moveThings(now, thingsOf(now, [thing]), axis === 0 ? [by, 0] : [0, by]);
      },
    });
  return [place(0, 'East', [0, at[1]]), place(1, 'North', [at[0], 0])];
}

/** The length of each edge from the first drawn. */
export function edgeDimensions(plan: Plan, id: string, swapped: boolean): readonly Dimension[] {
  const found = shapeIn(plan, id);
  if (!found) return [];
  const { base } = found.shape;
  return edgesOf(found.shape).map(([a, b], edge) =>
    dimension({
      key: `edge ${edge}`,
      label: `Edge ${edge + 1}`,
      measure: 'length',
      value: span(a, b),
      bounds: LIMITS.size,
      between: [lifted(a, base), lifted(b, base)],
      moves: swapped ? 'first' : 'second',
      change: (length) => (now) => setEdgeLength(now, id, edge, length, !swapped, 'measured'),
    }),
  );
}

const lifted = ([x, y]: Vec2, z: number): Vec3 => [x, y, z];
/** To a nanometre: 3.2 is 3.2 again after having been 3. */
const rounded = (value: number): number => Math.round(value * 1e9) / 1e9;
