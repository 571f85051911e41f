import type { Vec3 } from '../../base/vector.ts';
import type { Solid } from '../../model/solid.ts';
import { onceEach, onceEachFrom } from './onceEach.ts';

/** How an edge is drawn when it is not a silhouette. */
export const CREASE = 1;
export const FINE = 2;

/** The edges of some solids: one entry an edge in each array, three numbers a point or direction. Site frame, relative to `origin`. */
export interface Edges {
  readonly count: number;
  readonly from: Float32Array;
  readonly to: Float32Array;
  /** Outward normals of the two faces that meet there. */
  readonly left: Float32Array;
  readonly right: Float32Array;
  /** CREASE, FINE or 0: nothing but a silhouette. */
  readonly kind: Float32Array;
}

const FLAT = Math.cos((1 * Math.PI) / 180);
const SHARP = Math.cos((20 * Math.PI) / 180);

/**
 * Finds the edges worth drawing: faces that turn by less than 1° are one face, by more than 20° a crease.
 * @param soft true where all inner edges are fine lines, such as a tree's crown
 */
export function edgesOf(solids: readonly Solid[], origin: Vec3, soft: (solid: Solid) => boolean): Edges {
  const parts = solids.map((solid) => ofOne(solid, origin));
  const count = parts.reduce((sum, part) => sum + part.kind.length, 0);
  const room = (): Float32Array<ArrayBuffer> => new Float32Array(count * 3);
  const [from, to, left, right] = [room(), room(), room(), room()];
  const kind = new Float32Array(count);
  let at = 0;
  parts.forEach((part, k) => {
    const solid = solids[k];
    const gentle = solid !== undefined && soft(solid);
    from.set(part.from, at * 3);
    to.set(part.to, at * 3);
    left.set(part.left, at * 3);
    right.set(part.right, at * 3);
    if (gentle) kind.fill(FINE, at, at + part.kind.length);
    else kind.set(part.kind, at);
    at += part.kind.length;
  });
  return { count, from, to, left, right, kind };
}

/** The edges of one solid, near the origin first and then in single precision. */
const ofOne = onceEachFrom((solid: Solid, origin) => {
  const [from, to, left, right, kind]: [number[], number[], number[], number[], number[]] = [
    [],
    [],
    [],
    [],
    [],
  ];
  const normals = faceNormals(solid);
  for (const [a, b, f, g] of pairs(solid)) {
    const n: Vec3 = [normals[f] ?? 0, normals[f + 1] ?? 0, normals[f + 2] ?? 0];
    const m: Vec3 = [normals[g] ?? 0, normals[g + 1] ?? 0, normals[g + 2] ?? 0];
    const turn = n[0] * m[0] + n[1] * m[1] + n[2] * m[2];
    if (turn > FLAT) continue;
    const p = solid.positions;
    for (const axis of [0, 1, 2] as const) {
      from.push((p[a * 3 + axis] ?? 0) - origin[axis]);
      to.push((p[b * 3 + axis] ?? 0) - origin[axis]);
    }
    left.push(...n);
    right.push(...m);
    kind.push(turn > SHARP ? FINE : CREASE);
  }
  return {
    from: Float32Array.from(from),
    to: Float32Array.from(to),
    left: Float32Array.from(left),
    right: Float32Array.from(right),
    kind: Float32Array.from(kind),
  };
});

/** Outward unit normals, three numbers a triangle; zeros for one without area. */
export const faceNormals = onceEach(({ positions: p, triangles }: Solid): Float64Array => {
  const normals = new Float64Array(triangles.length);
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    const [a, b, c] = [(triangles[i] ?? 0) * 3, (triangles[i + 1] ?? 0) * 3, (triangles[i + 2] ?? 0) * 3];
    const [ax, ay, az] = [p[a] ?? 0, p[a + 1] ?? 0, p[a + 2] ?? 0];
    const [ux, uy, uz] = [(p[b] ?? 0) - ax, (p[b + 1] ?? 0) - ay, (p[b + 2] ?? 0) - az];
    const [vx, vy, vz] = [(p[c] ?? 0) - ax, (p[c + 1] ?? 0) - ay, (p[c + 2] ?? 0) - az];
    const n: Vec3 = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const size = Math.hypot(...n);
    if (size > 0) normals.set([n[0] / size, n[1] / size, n[2] / size], i);
  }
  return normals;
});

type Pair = readonly [a: number, b: number, face: number, otherFace: number];

/** Each edge once, with the first index of the two triangles that share it. */
function pairs({ triangles }: Solid): Pair[] {
  const open = new Map<number, Pair>();
  const found: Pair[] = [];
  const key = (a: number, b: number): number => Math.min(a, b) * 0x4000000 + Math.max(a, b);
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    for (let side = 0; side < 3; side += 1) {
      const a = triangles[i + side] ?? 0;
      const b = triangles[i + ((side + 1) % 3)] ?? 0;
      const other = open.get(key(a, b));
      if (other) {
        found.push([other[0], other[1], other[2], i]);
        open.delete(key(a, b));
      } else open.set(key(a, b), [a, b, i, i]);
    }
  }
  return found;
}
