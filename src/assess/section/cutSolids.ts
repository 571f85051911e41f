import type { Plane } from '../../base/plane.ts';
import type { Vec2 } from '../../base/vector.ts';
import { sliceAt } from '../../model/slice.ts';
import type { Solid } from '../../model/solid.ts';
import { GROUND } from '../../model/terrainSolid.ts';
import { chain } from '../../sight/rings.ts';
import type { CutSolid } from './section.ts';

/** The cuts of all solids but the ground's own that a vertical plane meets, in the order of the scene. */
export function cutSolids(solids: readonly Solid[], plane: Plane): CutSolid[] {
  return solids.flatMap((solid, index): CutSolid[] => {
    if (solid.id === GROUND || !meets(solid, plane)) return [];
    const sides = sliceAt(solid, plane);
    if (sides.length === 0) return [];
    const { rings, closed } = chain(piecesOf(sides));
    const { id, structure, name, passage } = solid;
    return [
      { solid: index, id, structure, name, passage, rings, closed, sides, sheets: sheetsOf(solid, plane) },
    ];
  });
}

/** The normals of a screen's sheets in the plane; what lies off it turns nothing along it. */
function sheetsOf({ sheets }: Solid, { u, v }: Plane): Vec2[] {
  const found = new Map<string, Vec2>();
  for (let at = 0; at < (sheets?.length ?? 0); at += 3) {
    const [x, y, z] = [sheets?.[at] ?? 0, sheets?.[at + 1] ?? 0, sheets?.[at + 2] ?? 0];
    if (x === 0 && y === 0 && z === 0) continue;
    const normal: Vec2 = [x * u[0] + y * u[1] + z * u[2], x * v[0] + y * v[1] + z * v[2]];
    found.set(normal.map((n) => n.toFixed(9)).join(' '), normal);
  }
  return [...found.values()];
}

/** Whether corners lie on both sides of a plane: most solids are told by that, without their triangles. */
function meets({ positions }: Solid, { origin, normal }: Plane): boolean {
  let [isAbove, isBelow] = [false, false];
  for (let at = 0; at < positions.length; at += 3) {
    const off =
      normal[0] * ((positions[at] ?? 0) - origin[0]) +
      normal[1] * ((positions[at + 1] ?? 0) - origin[1]) +
      normal[2] * ((positions[at + 2] ?? 0) - origin[2]);
    if (off > 0) isAbove = true;
    else isBelow = true;
    if (isAbove && isBelow) return true;
  }
  return false;
}

const piecesOf = (sides: Float64Array) =>
  Array.from({ length: sides.length / 4 }, (_, at) => {
    const n = (k: number) => sides[at * 4 + k] ?? 0;
    return { from: [n(0), n(1)] as Vec2, to: [n(2), n(3)] as Vec2, beyond: 0 };
  });

/**
 * The line of the ground between two ends, from left to right: level where the ground is flat, else its own cut.
 * @param datum the height of flat ground lies at 0
 */
export function groundLine(solids: readonly Solid[], plane: Plane, from: number, to: number): Vec2[] {
  const ground = solids.at(-1)?.id === GROUND ? solids.at(-1) : undefined;
  if (ground === undefined)
    return [
      [from, 0],
      [to, 0],
    ];
  const sides = sliceAt(ground, plane);
  const bottom = sides.reduce(
    (least, value, at) => (at % 2 === 1 ? Math.min(least, value) : least),
    Infinity,
  );
  // With the solid on its left a side of the surface runs from right to left; the bottom and the ends do not.
  const tops: (readonly [Vec2, Vec2])[] = [];
  for (let at = 0; at < sides.length; at += 4) {
    const [t0, h0, t1, h1] = [sides[at] ?? 0, sides[at + 1] ?? 0, sides[at + 2] ?? 0, sides[at + 3] ?? 0];
    if (t1 < t0 && Math.max(h0, h1) > bottom)
      tops.push([
        [t1, h1],
        [t0, h0],
      ]);
  }
  tops.sort(([a], [b]) => a[0] - b[0]);
  const line: Vec2[] = [];
  const add = (place: Vec2) => {
    const last = line.at(-1);
    if (last === undefined || Math.hypot(place[0] - last[0], place[1] - last[1]) > 1e-9) line.push(place);
  };
  for (const [left, right] of tops) {
    if (right[0] <= from || left[0] >= to) continue;
    add(left[0] < from ? at(left, right, from) : left);
    add(right[0] > to ? at(left, right, to) : right);
  }
  return line;
}

function at(left: Vec2, right: Vec2, t: number): Vec2 {
  return [t, left[1] + ((right[1] - left[1]) * (t - left[0])) / (right[0] - left[0])];
}

/** The height of a line from left to right at t; beyond its ends that of the end. */
export function heightAlong(line: readonly Vec2[], t: number): number {
  const [first] = line;
  if (first === undefined || t <= first[0]) return first?.[1] ?? 0;
  for (let k = 1; k < line.length; k += 1) {
    const [left, right] = [line[k - 1], line[k]];
    if (left && right && t <= right[0] && right[0] > left[0]) return at(left, right, t)[1];
  }
  return line.at(-1)?.[1] ?? 0;
}
