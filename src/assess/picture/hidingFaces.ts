import { HIT_TOLERANCE } from '../../base/tolerance.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Facets } from '../../sight/facets.ts';
import { touchedSolids } from '../../sight/lensInside.ts';

/** Numbers a face: its box (6), four edge normals (12), its normal (3) and how far along that it lies. */
const SIZE = 22;

/** Off a face by less than this a place is on it and not behind it, m. */
const ON_FACE = 1e-4;

/** Between what neighbouring faces hide nothing shines through that is shorter than this share of an edge. */
const SLIVER = 1e-9;

/** The faces that can hide something from a lens, all from the lens. */
export interface HidingFaces {
  readonly count: number;
  readonly numbers: Float64Array;
  readonly sides: Uint8Array;
}

/**
 * The faces of solids that are turned to a lens; of a solid that it touches also those turned away (sight/segment.ts).
 * Cost: linear in faces.
 */
export function hidingFaces(facets: Facets, eye: Vec3): HidingFaces {
  const { faces, solids, solid } = facets;
  const touched = touchedSolids(eye, facets);
  const numbers = new Float64Array(faces.count * SIZE);
  const sides = new Uint8Array(faces.count);
  let count = 0;
  for (let face = 0; face < faces.count; face += 1) {
    const own = solid[faces.facet[face] ?? 0] ?? 0;
    if (solids[own]?.passage !== 'solid') continue;
    const many = faces.sides[face] ?? 3;
    const n = (axis: number) => faces.normals[face * 4 + axis] ?? 0;
    const q = (k: number, axis: 0 | 1 | 2) =>
      (faces.corners[face * 12 + (k % many) * 3 + axis] ?? 0) - eye[axis];
    const off = n(0) * q(0, 0) + n(1) * q(0, 1) + n(2) * q(0, 2);
    const size = Math.hypot(n(0), n(1), n(2));
    if (size === 0) continue;
    const isFront = off < 0;
    const isBack = touched?.[own] === 1 && off > HIT_TOLERANCE * size;
    if (!isFront && !isBack) continue;
    const sense = isFront ? 1 : -1;
    const at = count * SIZE;
    numbers.set([Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity], at);
    for (let k = 0; k < many; k += 1) {
      const [ax, ay, az] = [q(k, 0), q(k, 1), q(k, 2)];
      const [bx, by, bz] = [q(k + 1, 0), q(k + 1, 1), q(k + 1, 2)];
      const edge = at + 6 + k * 3;
      numbers[edge] = sense * (by * az - bz * ay);
      numbers[edge + 1] = sense * (bz * ax - bx * az);
      numbers[edge + 2] = sense * (bx * ay - by * ax);
      [ax, ay, az].forEach((value, axis) => {
        numbers[at + axis] = Math.min(numbers[at + axis] ?? 0, value);
        numbers[at + 3 + axis] = Math.max(numbers[at + 3 + axis] ?? 0, value);
      });
    }
    for (let axis = 0; axis < 3; axis += 1) numbers[at + 18 + axis] = (sense * n(axis)) / size;
    numbers[at + 21] = (sense * off) / size - ON_FACE;
    sides[count] = many;
    count += 1;
  }
  return { count, numbers, sides };
}

/**
 * The stretches of a segment that nothing hides: from, to in turn, as shares of it, in order. Each face hides one interval:
 * where the segment is on the inner side of all its edges as the lens sees them, and behind its plane. All are affine.
 * Cost: linear in faces.
 * @param a, b the segment's ends from the lens
 */
export function seenStretches({ count, numbers, sides }: HidingFaces, a: Vec3, b: Vec3): number[] {
  const box = [0, 1, 2].map((axis) => Math.min(0, a[axis] ?? 0, b[axis] ?? 0));
  const top = [0, 1, 2].map((axis) => Math.max(0, a[axis] ?? 0, b[axis] ?? 0));
  const [lx = 0, ly = 0, lz = 0] = box;
  const [hx = 0, hy = 0, hz = 0] = top;
  const hidden: [number, number][] = [];
  for (let face = 0; face < count; face += 1) {
    const at = face * SIZE;
    if ((numbers[at] ?? 0) > hx || (numbers[at + 3] ?? 0) < lx) continue;
    if ((numbers[at + 1] ?? 0) > hy || (numbers[at + 4] ?? 0) < ly) continue;
    if ((numbers[at + 2] ?? 0) > hz || (numbers[at + 5] ?? 0) < lz) continue;
    let [low, high] = [0, 1];
    const keep = (one: number, two: number): void => {
      // Not below 0 stays.
      if (one < 0 && two < 0) high = -1;
      else if (one < 0) low = Math.max(low, one / (one - two));
      else if (two < 0) high = Math.min(high, one / (one - two));
    };
    const n = at + 18;
    const [nx, ny, nz] = [numbers[n] ?? 0, numbers[n + 1] ?? 0, numbers[n + 2] ?? 0];
    const off = numbers[n + 3] ?? 0;
    keep(off - (nx * a[0] + ny * a[1] + nz * a[2]), off - (nx * b[0] + ny * b[1] + nz * b[2]));
    const many = sides[face] ?? 3;
    for (let k = 0; k < many && low < high; k += 1) {
      const e = at + 6 + k * 3;
      const [ex, ey, ez] = [numbers[e] ?? 0, numbers[e + 1] ?? 0, numbers[e + 2] ?? 0];
      keep(ex * a[0] + ey * a[1] + ez * a[2], ex * b[0] + ey * b[1] + ez * b[2]);
    }
    if (low < high) hidden.push([low, high]);
  }
  hidden.sort(([one], [two]) => one - two);
  const seen: number[] = [];
  let until = 0;
  for (const [low, high] of hidden) {
    if (low > until + SLIVER) seen.push(until, low);
    until = Math.max(until, high);
  }
  if (until + SLIVER < 1) seen.push(until, 1);
  return seen;
}
