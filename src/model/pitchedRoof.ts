import { bearing, degreesFromRad, tan, turn } from '../base/angle.ts';
import { SAME_POINT } from '../base/tolerance.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import { meanLength, middle, spread } from './rectangle.ts';
import { cornerAt } from './ring.ts';
import type { RoofShape } from './roofShape.ts';
import { heading, moved, rightOf, span } from './segment.ts';
import type { Ring, Roof } from './structure.ts';
import { levelTop } from './wall.ts';

const raised = (p: Vec2, z: number): Vec3 => [p[0], p[1], z];
const bearingOf = (d: Vec2): number => bearing(degreesFromRad(Math.atan2(d[0], d[1])));
const outwardBearing = (outline: Ring, k: number): number =>
  bearingOf(rightOf(heading(cornerAt(outline, k), cornerAt(outline, k + 1))));

/** The longer pair of edges: 0 (with 2) or 1 (with 3). */
const longer = (outline: Ring): number => (meanLength(outline, 1) > meanLength(outline, 0) ? 1 : 0);

/** The eaves edge along which the ridge of a gable runs: the one nearest in direction to the bearing asked for. */
function ridgeEdge(outline: Ring, ridge: number | null): number {
  if (ridge === null) return longer(outline);
  const off = (k: number): number => {
    const between = Math.abs(turn(bearingOf(heading(cornerAt(outline, k), cornerAt(outline, k + 1))), ridge));
    return Math.min(between, 180 - between);
  };
  return off(1) < off(0) ? 1 : 0;
}

/** The low edge of a mono-pitch: facing nearest to the bearing, or without one, the longer edge facing most nearly south. */
function lowEdge(outline: Ring, fall: number | null): number {
  const candidates = fall === null ? [longer(outline), longer(outline) + 2] : [0, 1, 2, 3];
  const off = (k: number): number => Math.abs(turn(outwardBearing(outline, k), fall ?? 180));
  return candidates.reduce((best, k) => (off(k) < off(best) - 1e-9 ? k : best));
}

/** A gable: two planes from the eaves to a ridge between the gable walls, which go up to it; verges flush. */
export function gableRoof(outline: Ring, eavesZ: number, roof: Roof, overhang: number): RoofShape {
  const k = ridgeEdge(outline, roof.ridge);
  const [k1, k2, k3] = [(k + 1) % 4, (k + 2) % 4, (k + 3) % 4];
  const eaves = spread(
    outline,
    [0, 1, 2, 3].map((edge) => (edge === k || edge === k2 ? overhang : 0)),
  );
  const ridgeZ = eavesZ + (meanLength(outline, k1) / 2 + overhang) * tan(roof.pitch);
  const low = eaves.map((p) => raised(p, eavesZ));
  const near = raised(middle(cornerAt(outline, k3), cornerAt(outline, k)), ridgeZ);
  const far = raised(middle(cornerAt(outline, k1), cornerAt(outline, k2)), ridgeZ);
  const at = (edge: number): Vec3 => low[edge] ?? near;
  const topOf = (edge: number): readonly Vec3[] => {
    const a = cornerAt(outline, edge);
    const b = cornerAt(outline, edge + 1);
    const ridgeEnd = edge === k1 ? far : edge === k3 ? near : null;
    if (!ridgeEnd) return levelTop(a, b, eavesZ);
    return [raised(b, eavesZ), at((edge + 1) % 4), ridgeEnd, at(edge), raised(a, eavesZ)];
  };
  return {
    kind: 'gable',
    topOf,
    wallTop: eavesZ,
    faces: [
      [at(k), at(k1), far, near],
      [at(k2), at(k3), near, far],
    ],
    caps: [{ z: eavesZ, outside: 'down' }],
    soffitDepth: (edge) => (edge === k || edge === k2 ? overhang : 0),
    notes: [],
  };
}

/** A hip: a plane of the same pitch from each eaves edge, meeting in a ridge along the longer side, or in a point. */
export function hipRoof(outline: Ring, eavesZ: number, roof: Roof, overhang: number): RoofShape {
  const k = longer(outline);
  const eaves = spread(outline, [overhang, overhang, overhang, overhang]);
  const [e0, e1, e2, e3] = [0, 1, 2, 3].map((step) => cornerAt(eaves, k + step));
  if (!e0 || !e1 || !e2 || !e3) throw new RangeError(`a hip roof needs 4 corners, got ${outline.length}`);
  const halfSpan = meanLength(outline, k + 1) / 2 + overhang;
  const near = middle(e3, e0);
  const far = middle(e1, e2);
  const ridgeZ = eavesZ + halfSpan * tan(roof.pitch);
  const isPoint = span(near, far) - 2 * halfSpan < SAME_POINT;
  const along = heading(near, far);
  const start = raised(isPoint ? middle(near, far) : moved(near, along, halfSpan), ridgeZ);
  const end = isPoint ? start : raised(moved(far, along, -halfSpan), ridgeZ);
  const low = (p: Vec2): Vec3 => raised(p, eavesZ);
  const long = (a: Vec2, b: Vec2, over: Vec3, back: Vec3): Vec3[] =>
    isPoint ? [low(a), low(b), over] : [low(a), low(b), over, back];
  return {
    kind: 'hip',
    topOf: (edge) => levelTop(cornerAt(outline, edge), cornerAt(outline, edge + 1), eavesZ),
    wallTop: eavesZ,
    faces: [
      long(e0, e1, end, start),
      [low(e1), low(e2), end],
      long(e2, e3, start, end),
      [low(e3), low(e0), start],
    ],
    caps: [{ z: eavesZ, outside: 'down' }],
    soffitDepth: () => overhang,
    notes: [],
  };
}

/** A mono-pitch: one plane from the low eaves up to the high side; without overhang the walls go up to it. */
export function monopitchRoof(outline: Ring, eavesZ: number, roof: Roof, overhang: number): RoofShape {
  const k = lowEdge(outline, roof.ridge);
  const eaves = spread(outline, [overhang, overhang, overhang, overhang]);
  const highZ = eavesZ + (meanLength(outline, k + 1) + 2 * overhang) * tan(roof.pitch);
  const zAt = (corner: number): number => ((corner - k + 8) % 4 >= 2 ? highZ : eavesZ);
  const top = (corner: number): Vec3 => raised(cornerAt(eaves, corner), zAt(corner % 4));
  const low = (corner: number): Vec3 => raised(cornerAt(eaves, corner), eavesZ);
  const plane = [top(k), top(k + 1), top(k + 2), top(k + 3)];
  const upstands = [
    [low(k + 1), low(k + 2), top(k + 2)],
    [low(k + 2), low(k + 3), top(k + 3), top(k + 2)],
    [low(k + 3), low(k), top(k + 3)],
  ];
  return {
    kind: 'monopitch',
    topOf: (edge) =>
      overhang > 0
        ? levelTop(cornerAt(outline, edge), cornerAt(outline, edge + 1), eavesZ)
        : [top(edge + 1), top(edge)],
    wallTop: eavesZ,
    faces: overhang > 0 ? [plane, ...upstands] : [plane],
    caps: [{ z: eavesZ, outside: 'down' }],
    soffitDepth: () => overhang,
    notes: [],
  };
}
