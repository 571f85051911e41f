/*
 * Where a ray meets simple bodies. Rays are from + s · along; s is above 0, and Infinity where there is nothing.
 */

type Three = readonly number[];

/** An ellipsoid with its axes along x, y and z. */
export interface Ellipsoid {
  readonly at: readonly [number, number, number];
  readonly half: readonly [number, number, number];
}

/**
 * Where a ray enters and leaves an ellipsoid.
 * @returns s of both; Infinity twice where it misses
 * Source: the quadratic of a line and the unit sphere, after scaling by the axes.
 */
export function crossings({ at, half }: Ellipsoid, from: Three, along: Three, both: Float64Array): void {
  let [a, b, c] = [0, 0, -1];
  for (let axis = 0; axis < 3; axis += 1) {
    const size = half[axis] ?? 1;
    const o = ((from[axis] ?? 0) - (at[axis] ?? 0)) / size;
    const d = (along[axis] ?? 0) / size;
    a += d * d;
    b += o * d;
    c += o * o;
  }
  const inner = b * b - a * c;
  if (!(inner >= 0) || a === 0) return void both.fill(Infinity);
  const root = Math.sqrt(inner);
  both[0] = (-b - root) / a;
  both[1] = (-b + root) / a;
}

/** The outward normal of an ellipsoid at a place on it: its z, and its cosine with the way back along a ray. */
export function normalOf(
  { at, half }: Ellipsoid,
  place: Three,
  along: Three,
): { readonly up: number; readonly facing: number } {
  const n = [0, 1, 2].map((axis) => ((place[axis] ?? 0) - (at[axis] ?? 0)) / (half[axis] ?? 1) ** 2);
  const [x = 0, y = 0, z = 0] = n;
  const size = Math.hypot(x, y, z);
  const [dx = 0, dy = 0, dz = 0] = along;
  return {
    up: z / size,
    facing: Math.abs(x * dx + y * dy + z * dz) / (size * Math.hypot(dx, dy, dz)),
  };
}

/**
 * Where a ray meets the plane y = depth from its front (y greater).
 * @returns s; Infinity from behind, along it, and away from it
 */
export function frontPlane(depth: number, from: Three, along: Three): number {
  const toward = along[1] ?? 0;
  const s = (depth - (from[1] ?? 0)) / toward;
  return toward < 0 && s > 0 ? s : Infinity;
}
