import { cos, sin } from '../base/angle.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Camera } from './camera.ts';
import { angleOfLawRad, hasImageRad, lawRad } from './lens.ts';

/** The camera's own directions in the site frame, unit and square to one another; forward = right × down. */
export interface Axes {
  readonly right: Vec3;
  readonly down: Vec3;
  readonly forward: Vec3;
}

/**
 * Directions of a pose. forward = (cos t sin p, cos t cos p, −sin t), right = (cos p, −sin p, 0), down = forward × right;
 * roll turns right towards down about forward.
 * @param pose pan, tilt, roll in degrees
 */
export function axesOf({ pan, tilt, roll }: { pan: number; tilt: number; roll: number }): Axes {
  const [sp, cp, st, ct, sr, cr] = [sin(pan), cos(pan), sin(tilt), cos(tilt), sin(roll), cos(roll)];
  const forward: Vec3 = [ct * sp, ct * cp, -st];
  const right: Vec3 = [cp, -sp, 0];
  const down: Vec3 = [-sp * st, -cp * st, -ct];
  return {
    forward,
    right: [cr * right[0] + sr * down[0], cr * right[1] + sr * down[1], cr * right[2] + sr * down[2]],
    down: [cr * down[0] - sr * right[0], cr * down[1] - sr * right[1], cr * down[2] - sr * right[2]],
  };
}

/** Pan and tilt (°) of the axis that meets a point from a lens; pan keeps `panBelow` where the point is straight below or above. */
export function aimAt(eye: Vec3, point: Vec3, panBelow: number): { pan: number; tilt: number } {
  const [dx, dy, dz] = [point[0] - eye[0], point[1] - eye[1], point[2] - eye[2]];
  const over = Math.hypot(dx, dy);
  const tilt = (Math.atan2(-dz, over) * 180) / Math.PI;
  if (over < 1e-9) return { pan: panBelow, tilt };
  const pan = (Math.atan2(dx, dy) * 180) / Math.PI;
  return { pan: pan < 0 ? pan + 360 : pan, tilt };
}

/** Pixels per millimetre of sensor, across and down. */
export const pixelPitch = (camera: Camera): { across: number; down: number } => ({
  across: camera.frame.width / camera.sensor.width,
  down: camera.frame.height / camera.sensor.height,
});

/** A place in the picture: right and down from the outer corner of the top-left pixel. */
export interface ImagePoint {
  readonly u: number;
  readonly v: number;
}

/**
 * Where a point of the site appears in the picture, in or out of the frame.
 * @param point site frame, m
 * @returns     pixels; null where the lens has no image of it
 * Source: design, lens law; pinhole camera for k = 1.
 */
export const imageFromSite = (camera: Camera, point: Vec3): ImagePoint | null => imagesOf(camera)(point);

/** The same for many points of one camera: its directions are worked out once. */
export function imagesOf(camera: Camera): (point: Vec3) => ImagePoint | null {
  const { right, down, forward } = axesOf(camera);
  const pitch = pixelPitch(camera);
  const { eye, k, focalLength, frame } = camera;
  return (point) => {
    const d: Vec3 = [point[0] - eye[0], point[1] - eye[1], point[2] - eye[2]];
    const x = along(right, d);
    const y = along(down, d);
    const z = along(forward, d);
    const off = Math.hypot(x, y);
    const thetaRad = Math.atan2(off, z);
    if ((off === 0 && z <= 0) || !hasImageRad(thetaRad, k)) return null;
    const gain = off === 0 ? 0 : (focalLength * lawRad(thetaRad, k)) / off;
    return { u: frame.width / 2 + gain * x * pitch.across, v: frame.height / 2 + gain * y * pitch.down };
  };
}

const along = (a: Vec3, d: Vec3): number => a[0] * d[0] + a[1] * d[1] + a[2] * d[2];

/**
 * The direction in which a place of the picture looks: the exact inverse of `imageFromSite`.
 * @returns unit vector in the site frame; null beyond the lens's greatest radius
 */
export function siteRayFromImage(camera: Camera, { u, v }: ImagePoint): Vec3 | null {
  const pitch = pixelPitch(camera);
  const x = (u - camera.frame.width / 2) / pitch.across;
  const y = (v - camera.frame.height / 2) / pitch.down;
  const off = Math.hypot(x, y);
  const thetaRad = angleOfLawRad(off / camera.focalLength, camera.k);
  if (thetaRad === null) return null;
  const { right, down, forward } = axesOf(camera);
  const side = off === 0 ? 0 : Math.sin(thetaRad) / off;
  const ahead = Math.cos(thetaRad);
  return [
    side * (x * right[0] + y * down[0]) + ahead * forward[0],
    side * (x * right[1] + y * down[1]) + ahead * forward[1],
    side * (x * right[2] + y * down[2]) + ahead * forward[2],
  ];
}

/** Whether a point has an image within the frame; its edge counts as in. */
export function inFrame(camera: Camera, point: Vec3): boolean {
  const at = imageFromSite(camera, point);
  return at !== null && at.u >= 0 && at.v >= 0 && at.u <= camera.frame.width && at.v <= camera.frame.height;
}
