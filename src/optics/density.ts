import { SAME_POINT } from '../base/tolerance.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Camera } from './camera.ts';
import { hasImageRad, lawRad, lawSlopeRad } from './lens.ts';
import { axesOf, pixelPitch, type Axes } from './projection.ts';

/** Pixels per metre at a target for a displacement along the horizontal square to its bearing, and along the vertical. */
export interface Density {
  readonly horizontal: number;
  readonly vertical: number;
}

/**
 * Pixels per metre of the picture at a point, from the exact Jacobian of the projection.
 * @param point site frame, m
 * @returns     px/m, above 0; null where the lens has no image of the point
 * @throws      RangeError on a number that is not finite
 * Edge: straight below or above the lens, where the bearing is undefined, the least over all horizontals.
 * Source: Jacobian of the lens law (DEVELOPERS.md); judged horizontally as IEC 62676-4 judges a target facing the camera's bearing.
 */
export function densityAt(camera: Camera, point: Vec3): Density | null {
  for (const n of point)
    if (!Number.isFinite(n)) throw new RangeError(`a target needs finite coordinates, got ${n}`);
  const d: Vec3 = [point[0] - camera.eye[0], point[1] - camera.eye[1], point[2] - camera.eye[2]];
  const push = pusher(camera, axesOf(camera), d);
  if (push === null) return null;
  const vertical = size(push([0, 0, 1]));
  const over = Math.hypot(d[0], d[1]);
  const horizontal =
    over < SAME_POINT
      ? leastStretch(push([1, 0, 0]), push([0, 1, 0]))
      : size(push([d[1] / over, -d[0] / over, 0]));
  return { horizontal, vertical };
}

/**
 * Pixels per metre for a displacement along a given direction, such as a wall's own horizontal.
 * @param direction unit vector in the site frame
 */
export function densityAlong(camera: Camera, point: Vec3, direction: Vec3): number | null {
  const d: Vec3 = [point[0] - camera.eye[0], point[1] - camera.eye[1], point[2] - camera.eye[2]];
  const push = pusher(camera, axesOf(camera), d);
  return push === null ? null : size(push(direction));
}

type Displacement = readonly [du: number, dv: number];
const size = ([du, dv]: Displacement): number => Math.hypot(du, dv);

/** The map from a displacement of the target (m) to one of its image (px); null where there is no image. */
function pusher(camera: Camera, { right, down, forward }: Axes, d: Vec3): ((m: Vec3) => Displacement) | null {
  const along = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const x = along(right, d);
  const y = along(down, d);
  const z = along(forward, d);
  const off = Math.hypot(x, y);
  const thetaRad = Math.atan2(off, z);
  if ((off === 0 && z <= 0) || !hasImageRad(thetaRad, camera.k)) return null;
  const far2 = off * off + z * z;
  const [ex, ey] = off === 0 ? [1, 0] : [x / off, y / off];
  const slope = lawSlopeRad(thetaRad, camera.k);
  const round = off === 0 ? 1 / z : lawRad(thetaRad, camera.k) / off;
  const pitch = pixelPitch(camera);
  return (m) => {
    const [dx, dy, dz] = [along(right, m), along(down, m), along(forward, m)];
    const outwards = (slope * (z * (ex * dx + ey * dy) - off * dz)) / far2;
    const around = round * (ex * dy - ey * dx);
    return [
      camera.focalLength * pitch.across * (outwards * ex - around * ey),
      camera.focalLength * pitch.down * (outwards * ey + around * ex),
    ];
  };
}

/** The smaller singular value of the 2 × 2 matrix with these columns. */
function leastStretch(a: Displacement, b: Displacement): number {
  const [p, q, s] = [a[0] * a[0] + a[1] * a[1], b[0] * b[0] + b[1] * b[1], a[0] * b[0] + a[1] * b[1]];
  const greatest = (p + q + Math.hypot(p - q, 2 * s)) / 2;
  const area = Math.abs(a[0] * b[1] - a[1] * b[0]);
  // Above 0: wherever a lens has an image, it stretches at least around the axis.
  return area / Math.sqrt(greatest);
}

/** Depression at the target: how far above its horizon the lens stands, °; negative where the lens is lower. */
export function depressionAt(eye: Vec3, point: Vec3): number {
  const over = Math.hypot(point[0] - eye[0], point[1] - eye[1]);
  return (Math.atan2(eye[2] - point[2], over) * 180) / Math.PI;
}
