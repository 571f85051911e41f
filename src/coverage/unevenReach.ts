import { cos, sin } from '../base/angle.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import type { Reach } from './coverage.ts';
import type { UnevenGround } from './unevenGround.ts';

/** Steps along the cut; between them a change is found by halving. */
const STEPS = 600;

/**
 * How far a camera serves along the vertical plane of its axis over uneven ground, over ground from the point below the lens:
 * judged by a ray at each step of a six-hundredth of the range, and where the answer changes to a centimetre.
 * @param bandAt index + 1 of the band of a target; 0 where it is not covered
 */
export function unevenReach(
  { eye, pan, range }: Camera,
  { terrain, height }: UnevenGround,
  bandAt: (target: Vec3) => number,
  bands: number,
): Reach {
  const at = (t: number): number => {
    const [x, y] = [eye[0] + t * sin(pan), eye[1] + t * cos(pan)];
    return bandAt([x, y, terrain.heightAt(x, y) + height]);
  };
  const change = (from: number, to: number, holds: (band: number) => boolean): number => {
    let [low, high] = [from, to];
    const first = holds(at(from));
    while (high - low > 0.01) {
      const middle = (low + high) / 2;
      if (holds(at(middle)) === first) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  let nearest: number | null = null;
  const farthest = new Array<number | null>(bands).fill(null);
  let before = at(0);
  if (before > 0) nearest = 0;
  for (let step = 1; step <= STEPS; step += 1) {
    const [from, to] = [((step - 1) * range) / STEPS, (step * range) / STEPS];
    const here = at(to);
    if (here > 0 && nearest === null) nearest = change(from, to, (band) => band > 0);
    for (let band = 0; band < bands; band += 1) {
      const reaches = (one: number) => one > band;
      if (reaches(here)) farthest[band] = to;
      else if (reaches(before)) farthest[band] = change(from, to, reaches);
    }
    before = here;
  }
  return { nearBlindDistance: nearest, byBand: farthest };
}
