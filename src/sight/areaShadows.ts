import type { Vec2 } from '../base/vector.ts';
import { BOX, DEPTH, STRIDE, type Shadows } from './shadows.ts';

/**
 * Flat areas of the plane itself, such as the cut of a solid, as shadows: one a triangle, at one depth.
 * @param all       six numbers a triangle, plane coordinates, counter-clockwise
 * @param foot      of the lens, plane coordinates
 * @param solid     what the shadows are named by
 */
export function areaShadows(all: Float64Array, foot: Vec2, solid: number): Shadows {
  const triangles = withWidth(all);
  const count = triangles.length / 6;
  const numbers = new Float64Array(count * STRIDE);
  for (let triangle = 0; triangle < count; triangle += 1) {
    const base = triangle * STRIDE;
    const p = (corner: number) => (triangles[triangle * 6 + (corner % 3) * 2] ?? 0) - foot[0];
    const q = (corner: number) => (triangles[triangle * 6 + (corner % 3) * 2 + 1] ?? 0) - foot[1];
    const sense = Math.sign((p(1) - p(0)) * (q(2) - q(0)) - (p(2) - p(0)) * (q(1) - q(0)));
    for (let side = 0; side < 3; side += 1) {
      const [dp, dq] = [p(side + 1) - p(side), q(side + 1) - q(side)];
      const size = Math.hypot(dp, dq) * sense;
      const [a, b] = [-dq / size, dp / size];
      numbers.set([a, b, -(a * p(side) + b * q(side))], base + side * 3);
    }
    // Depth is the same everywhere: rank decides before it.
    numbers.set([0, 0, 1], base + DEPTH);
    numbers.set(
      [
        Math.min(p(0), p(1), p(2)),
        Math.min(q(0), q(1), q(2)),
        Math.max(p(0), p(1), p(2)),
        Math.max(q(0), q(1), q(2)),
      ],
      base + BOX,
    );
  }
  return {
    count,
    numbers,
    sides: new Uint8Array(count).fill(3),
    outline: new Uint8Array(count).fill(7),
    solid: new Int32Array(count).fill(solid),
    facet: new Int32Array(count).fill(-1),
    dark: null,
  };
}

/** A triangle narrower than this, m, is rounding: a corner in line with a side. */
const THINNEST = 1e-7;

function withWidth(triangles: Float64Array): Float64Array {
  const kept: number[] = [];
  for (let at = 0; at < triangles.length; at += 6) {
    const n = (k: number) => triangles[at + k] ?? 0;
    const [ux, uy, vx, vy] = [n(2) - n(0), n(3) - n(1), n(4) - n(0), n(5) - n(1)];
    const longest = Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy), Math.hypot(vx - ux, vy - uy));
    if (Math.abs(ux * vy - vx * uy) > THINNEST * longest) for (let k = 0; k < 6; k += 1) kept.push(n(k));
  }
  return kept.length === triangles.length ? triangles : Float64Array.from(kept);
}
