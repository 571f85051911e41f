import { cos, sin } from '../../base/angle.ts';
import type { Plane } from '../../base/plane.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';

/**
 * The vertical plane through a lens along its pan: u ahead, v up, origin at the datum below the lens.
 * @param datum height of the ground's datum in the site frame, m
 */
export function sectionPlane({ eye, pan }: Pick<Camera, 'eye' | 'pan'>, datum: number): Plane {
  const [ahead, beside] = [sin(pan), cos(pan)];
  return {
    origin: [eye[0], eye[1], datum],
    u: [ahead, beside, 0],
    v: [0, 0, 1],
    normal: [beside, -ahead, 0],
  };
}

/** A place of a section in the site frame. */
export const siteFromSection = ({ origin, u }: Plane, [t, h]: Vec2): Vec3 => [
  origin[0] + t * u[0],
  origin[1] + t * u[1],
  origin[2] + h,
];
