import type { Vec2, Vec3 } from '../../base/vector.ts';
import { span } from '../../model/segment.ts';
import { setCorner } from '../../plan/commands/setCorner.ts';
import { slideEdge } from '../../plan/commands/slideEdge.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Candidate } from '../tools/snap.ts';
import type { LinePull, PlanePull } from './pull.ts';
import { shapeIn } from './shapeIn.ts';
import { edgesOf, shapeOf, type Shape } from './shapeOf.ts';
import { outOf } from './edgeGrips.ts';

const EAST: Vec3 = [1, 0, 0];
const NORTH: Vec3 = [0, 1, 0];

/** A corner over the ground, of a structure, a patch or `boundary`; on its neighbour it is taken out. */
export function cornerPull(plan: Plan, id: string, index: number): PlanePull | null {
  const found = shapeIn(plan, id);
  const corner = found?.shape.corners[index];
  if (!found || !corner) return null;
  return {
    ...overGround(corner, found.shape, index),
    name: `Corner ${index + 1} of ${found.name}`,
    ground: { held: [id], before: neighbours(found.shape, index) },
    set: (value, how) => (now) => setCorner(now, id, index, value, how),
  };
}

function overGround(corner: Vec2, { corners, closed, base }: Shape, index: number) {
  return {
    kind: 'plane',
    at: [corner[0], corner[1], base],
    axes: [EAST, NORTH],
    labels: ['East', 'North'],
    value: corner,
    snaps: [[], []],
    ghost: (value: Vec2) => ({
      points: corners.map(([x, y], k): Vec3 => (k === index ? [value[0], value[1], base] : [x, y, base])),
      closed,
    }),
  } as const satisfies Partial<PlanePull>;
}

/** The two corners that lead to one, nearest last: lengths and right angles are from there. */
function neighbours({ corners, closed }: Shape, index: number): Vec2[] {
  const at = (k: number): Vec2 | undefined =>
    closed ? corners[(k + corners.length) % corners.length] : corners[k];
  const way = at(index - 1) ? [at(index - 2), at(index - 1)] : [at(index + 2), at(index + 1)];
  return way.filter((corner) => corner !== undefined);
}

/** An edge pushed or pulled parallel to itself, out being positive. */
export function edgePull(plan: Plan, id: string, index: number): LinePull | null {
  const found = shapeIn(plan, id);
  const edge = found && edgesOf(found.shape)[index];
  if (!found || !edge || !(span(...edge) > 0)) return null;
  const [a, b] = edge;
  const out = outOf(found.shape, edge);
  const what = plan.structures[id]?.kind === 'building' ? 'Wall' : 'Edge';
  return {
    kind: 'line',
    name: `${what} ${index + 1} of ${found.name}`,
    at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, found.shape.base],
    along: [out[0], out[1], 0],
    label: 'Out',
    value: 0,
    bounds: LIMITS.coordinate,
    snaps: cornersInLine(plan, id, a, out),
    set: (distance, how) => (now) => slideEdge(now, id, index, distance, how),
  };
}

/** How far out an edge lies in line with the corners of other things; `from` is one of its ends. */
function cornersInLine(plan: Plan, own: string, from: Vec2, out: Vec2): Candidate[] {
  return Object.values(plan.structures).flatMap((other): Candidate[] => {
    const corners = other.id === own ? [] : (shapeOf(other)?.corners ?? []);
    return corners.map(([x, y]) => ({
      value: (x - from[0]) * out[0] + (y - from[1]) * out[1],
      pixels: 6,
      name: `in line with a corner of ${other.name}`,
    }));
  });
}
