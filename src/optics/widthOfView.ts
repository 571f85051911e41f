import { cos, sin, tan } from '../base/angle.ts';
import { distance, type Vec3 } from '../base/vector.ts';
import type { Camera } from './camera.ts';
import { inFrame } from './projection.ts';

/** The line is followed in steps of so many degrees, seen from the lens, and the end then halved between two. */
const STEP = 0.25;

/**
 * How much of the level line through a target, square to its bearing, the picture holds: from the target each way as far as
 * it first leaves the picture, by a side or, of a bent picture, above or below.
 * @param point in the picture, site frame, m
 * @returns     m; null where it goes on without an end
 */
export function widthOfView(camera: Camera, point: Vec3): number | null {
  const bearing = Math.atan2(point[0] - camera.eye[0], point[1] - camera.eye[1]) * (180 / Math.PI);
  const across: Vec3 = [cos(bearing), -sin(bearing), 0];
  const right = endOf(camera, point, across);
  const left = endOf(camera, point, [-across[0], -across[1], 0]);
  return left === null || right === null ? null : left + right;
}

/** m from the point to where the line leaves the picture; null where it never does. */
function endOf(camera: Camera, point: Vec3, way: Vec3): number | null {
  const far = distance(camera.eye, point);
  const at = (angle: number): number => far * tan(angle);
  const isIn = (angle: number): boolean => {
    const along = at(angle);
    return inFrame(camera, [point[0] + way[0] * along, point[1] + way[1] * along, point[2]]);
  };
  let inside = 0;
  let outside = 0;
  do {
    inside = outside;
    outside += STEP;
    if (outside >= 90) return null;
  } while (isIn(outside));
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (inside + outside) / 2;
    if (isIn(middle)) inside = middle;
    else outside = middle;
  }
  return at(inside);
}
