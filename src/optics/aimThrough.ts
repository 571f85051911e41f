import { bearing, degreesFromRad, radFromDegrees, turn } from '../base/angle.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Camera } from './camera.ts';
import { siteRayFromImage, type ImagePoint } from './projection.ts';

/** Between which tilts a camera may be aimed, °. */
export interface TiltBounds {
  readonly least: number;
  readonly most: number;
}

/**
 * Pan and tilt at which a direction of the site is seen at a place of the picture; roll and lens stay. Where no tilt within
 * the bounds does that, the tilt that comes nearest.
 *
 * With the ray of the pixel as (x, y, z) right, down and ahead of an upright camera, its height is −z sin t − y cos t: it has
 * two solutions t for the wanted height, of which the nearer to the present tilt is taken; pan then is the wanted bearing less
 * the ray's own. Exact: nothing is searched.
 * @param way unit vector in the site frame
 * @returns   null where the lens has no ray for that place
 */
export function aimThrough(
  camera: Camera,
  way: Vec3,
  at: ImagePoint,
  bounds: TiltBounds = { least: -90, most: 90 },
): { readonly pan: number; readonly tilt: number } | null {
  // An upright, level camera that looks north has right, down and ahead along x, −z and y.
  const ray = siteRayFromImage({ ...camera, pan: 0, tilt: 0 }, at);
  if (ray === null) return null;
  const [x, y, z] = [ray[0], -ray[2], ray[1]];
  const size = Math.hypot(y, z);
  const rise = size < 1e-12 ? 0 : Math.min(1, Math.max(-1, -way[2] / size));
  const lean = degreesFromRad(Math.atan2(y, z));
  const half = degreesFromRad(Math.asin(rise));
  const near = [half - lean, 180 - half - lean].map((tilt) => turn(0, tilt));
  const within = (tilt: number) => Math.min(bounds.most, Math.max(bounds.least, tilt));
  const off = (tilt: number) => Math.abs(tilt - within(tilt)) * 1e6 + Math.abs(tilt - camera.tilt);
  const [one = 0, two = 0] = near;
  const tilt = within(off(one) <= off(two) ? one : two);
  const over = Math.hypot(way[0], way[1]);
  // Straight up and down have no bearing.
  if (over < 1e-12) return { pan: camera.pan, tilt };
  const tiltRad = radFromDegrees(tilt);
  const ahead = Math.cos(tiltRad) * z - Math.sin(tiltRad) * y;
  if (Math.hypot(x, ahead) < 1e-12) return { pan: camera.pan, tilt };
  const pan = degreesFromRad(Math.atan2(way[0], way[1])) - degreesFromRad(Math.atan2(x, ahead));
  return { pan: bearing(pan), tilt };
}
