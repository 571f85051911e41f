import { bearing, degreesFromRad, tan, turn } from '../base/angle.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import { eavesOf } from './eaves.ts';
import type { Footprint } from './footprint.ts';
import { levelWalls } from './flatRoof.ts';
import { cornerAt } from './ring.ts';
import type { Loop, RoofShape } from './roofShape.ts';
import { crossOf, dotOf, heading, rightOf, span } from './segment.ts';
import { straightened } from './straightRun.ts';
import type { Ring, Roof } from './structure.ts';

/** Edges whose directions differ by less than this, as the sine of the angle, are parallel. */
const PARALLEL = Math.sin(Math.PI / 180);
/** A rise below this is none, m. */
const LEVEL = 1e-9;

export const bearingOf = (d: Vec2): number => bearing(degreesFromRad(Math.atan2(d[0], d[1])));

/**
 * The direction in which a mono-pitch falls: straight out from an edge of the outline; of all edges the one that faces
 * nearest to the bearing asked for, or without one, of the longest and those that run beside it the one that faces
 * most nearly south.
 */
export function fallOf(outline: Ring, fall: number | null): Vec2 {
  const edges = outline.map((a, k) => {
    const b = cornerAt(outline, k + 1);
    return { along: heading(a, b), length: span(a, b) };
  });
  const longest = edges.reduce((best, edge) => (edge.length > best.length + 1e-9 ? edge : best));
  const isBeside = (edge: { readonly along: Vec2 }): boolean =>
    Math.abs(crossOf(edge.along, longest.along)) < PARALLEL;
  const candidates = fall === null ? edges.filter(isBeside) : edges;
  const off = ({ along }: { readonly along: Vec2 }): number =>
    Math.abs(turn(bearingOf(rightOf(along)), fall ?? 180));
  return rightOf(candidates.reduce((best, edge) => (off(edge) < off(best) - 1e-9 ? edge : best)).along);
}

/**
 * A mono-pitch on any outline: one plane, which rises from the lowest point of its eaves. Without overhang the walls go
 * up to it; with one they end in a level soffit, and upright faces close the roof above its edge.
 */
export function monopitchRoof(footprint: Footprint, eavesZ: number, roof: Roof, overhang: number): RoofShape {
  const rings = overhang > 0 ? eavesOf(footprint, overhang).rings : [footprint.outline, ...footprint.holes];
  const fall = fallOf(straightened(footprint.outline).ring, roof.ridge);
  const slope = tan(roof.pitch);
  const origin = cornerAt(footprint.outline, 0);
  const downhill = ([x, y]: Vec2): number => dotOf([x - origin[0], y - origin[1]], fall);
  const lowest = Math.max(...(rings[0] ?? []).map(downhill));
  const over = (corner: Vec2): Vec3 => {
    const run = lowest - downhill(corner);
    return [corner[0], corner[1], run < LEVEL ? eavesZ : eavesZ + run * slope];
  };
  const plane = rings.map((ring) => ring.map(over));
  const walls = (ring: Ring, edge: number): Loop => [
    over(cornerAt(ring, edge + 1)),
    over(cornerAt(ring, edge)),
  ];
  return {
    kind: 'monopitch',
    ...(overhang > 0
      ? levelWalls(footprint, eavesZ)
      : {
          topOf: (edge) => walls(footprint.outline, edge),
          holeTopOf: (hole, edge) => walls(footprint.holes[hole] ?? [], edge),
        }),
    faces: overhang > 0 ? [plane, ...rings.flatMap((ring) => upstands(ring, over, eavesZ))] : [plane],
    caps: [{ z: eavesZ, outside: 'down' }],
    soffitDepth: () => overhang,
    notes: [],
  };
}

/** Upright faces from the soffit's outer edge up to the plane. */
function upstands(ring: Ring, over: (corner: Vec2) => Vec3, eavesZ: number): Loop[][] {
  return ring.flatMap((a, k) => {
    const b = cornerAt(ring, k + 1);
    const [low, high] = [[a, b].map(([x, y]): Vec3 => [x, y, eavesZ]), [over(b), over(a)]];
    const loop = [...low, ...high.filter(([, , z]) => z > eavesZ)];
    return loop.length > 2 ? [[loop]] : [];
  });
}
