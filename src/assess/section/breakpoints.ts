import type { Vec2 } from '../../base/vector.ts';
import { directionOf } from '../../optics/frameEdges.ts';
import type { CutSolid } from './section.ts';
import type { FrameEdges } from '../../optics/frameEdges.ts';

/** Two changes along a line nearer to one another than this are one, m. */
const SAME_CHANGE = 1e-9;

/**
 * Where something can change along a straight line of a section, in t from its left end to its right: at rays through the
 * corners past which a solid ends as the lens sees it, where the line enters and leaves solids, at the sides of the frame, and
 * below the lens. Both ends come too.
 * Screens close up and open where the line is seen at their limit.
 * @param lens    height of the lens
 * @param closing sine of the angle to its sheet below which a screen closes up
 */
export function breakpoints(
  left: Vec2,
  right: Vec2,
  lens: number,
  cuts: readonly CutSolid[],
  frame: FrameEdges,
  closing: number,
): number[] {
  const [run, rise] = [right[0] - left[0], right[1] - left[1]];
  const found = [left[0], right[0]];
  const add = (t: number) => {
    if (t > left[0] && t < right[0]) found.push(t);
  };
  /** Where the ray from the lens along a direction meets the line, from a share of the direction on. */
  const cast = (dt: number, dh: number, least: number) => {
    const across = run * dh - rise * dt;
    if (across === 0) return;
    const share = (run * (left[1] - lens) - rise * left[0]) / across;
    if (share >= least) add(share * dt);
  };
  for (const edge of [frame.top, frame.bottom]) {
    const [dt, dh] = directionOf(edge);
    cast(dt, dh, 0);
  }
  add(0);
  for (const { sides, rings, sheets } of cuts) {
    for (const [along, up] of sheets) {
      // (n·X)² = sin² X·X with X = P + s·W: a quadratic in s.
      const [p, w] = [along * left[0] + up * (left[1] - lens), along * run + up * rise];
      const sine2 = closing * closing;
      const a = w * w - sine2 * (run * run + rise * rise);
      const b = p * w - sine2 * (left[0] * run + (left[1] - lens) * rise);
      const c = p * p - sine2 * (left[0] ** 2 + (left[1] - lens) ** 2);
      const root2 = b * b - a * c;
      if (a === 0 || root2 < 0) continue;
      for (const sign of [-1, 1]) add(left[0] + ((-b + sign * Math.sqrt(root2)) / a) * run);
    }
    for (let at = 0; at < sides.length; at += 4) {
      const [t0, h0, t1, h1] = [sides[at] ?? 0, sides[at + 1] ?? 0, sides[at + 2] ?? 0, sides[at + 3] ?? 0];
      const across = run * (h1 - h0) - rise * (t1 - t0);
      if (across === 0) continue;
      const share = (run * (left[1] - h0) - rise * (left[0] - t0)) / across;
      if (share >= 0 && share <= 1) add(t0 + share * (t1 - t0));
    }
    for (const ring of rings) eachSilhouette(ring, lens, (t, h) => cast(t, h - lens, 1 - 1e-12));
  }
  found.sort((a, b) => a - b);
  return found.filter(
    (t, at) => at === 0 || t - (found[at - 1] ?? 0) > SAME_CHANGE || at === found.length - 1,
  );
}

/** Corners of a ring where a side that faces the lens meets one that does not. */
function eachSilhouette(ring: Float64Array, lens: number, visit: (t: number, h: number) => void): void {
  const count = ring.length / 2;
  const faces = (k: number): boolean => {
    const [t0, h0] = [ring[2 * k] ?? 0, ring[2 * k + 1] ?? 0];
    const next = (k + 1) % count;
    return ((ring[2 * next] ?? 0) - t0) * (lens - h0) + ((ring[2 * next + 1] ?? 0) - h0) * t0 < 0;
  };
  for (let k = 0; k < count; k += 1)
    if (faces(k) !== faces((k + count - 1) % count)) visit(ring[2 * k] ?? 0, ring[2 * k + 1] ?? 0);
}

/** The solids of cuts in which a place lies; one that lies in a side counts as above it, as `sliceAt` has it. */
export function solidsAround(cuts: readonly CutSolid[], [t, h]: Vec2): boolean {
  return cuts.some(({ sides }) => {
    let above = 0;
    for (let at = 0; at < sides.length; at += 4) {
      const [t0, h0, t1, h1] = [sides[at] ?? 0, sides[at + 1] ?? 0, sides[at + 2] ?? 0, sides[at + 3] ?? 0];
      if (t0 > t === t1 > t) continue;
      // The top of a solid runs from right to left.
      if (h0 + ((t - t0) / (t1 - t0)) * (h1 - h0) > h) above += t1 < t0 ? 1 : -1;
    }
    return above > 0;
  });
}
