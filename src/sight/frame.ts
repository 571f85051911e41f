import { dot, scale, subtract, add, type Vec3 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import { angleOfLawRad, greatestAngleRad } from '../optics/lens.ts';
import { axesOf, type Axes } from '../optics/projection.ts';
import type { Footing } from './footing.ts';
import type { HalfPlanes } from './halfPlanes.ts';

/** From this angle off the axis on, rad, a pyramid tells nothing. */
const FLAT = Math.PI / 2 - 1e-3;

/**
 * The frame of a camera on a plane as half-planes: the frame itself for a rectilinear lens, the narrowest pyramid around
 * it for another. Sides that leave the plane whole are left out; a bent frame that reaches 90° off the axis has none.
 * @returns null where the frame misses the plane
 */
export function frameHalfPlanes(camera: Camera, footing: Footing): HalfPlanes | null {
  const cut: [number, number, number][] = [];
  for (const side of frameSides(camera)) {
    const half = halfPlaneOf(side, footing);
    if (half === 'none') return null;
    if (half !== 'all') cut.push(half);
  }
  return cut;
}

/**
 * The planes through the lens around the frame, or around the narrowest pyramid that holds a bent one, by their normals:
 * what lies in the frame has normal · X ≥ 0 for all. None around a bent frame that reaches 90° off the axis.
 */
export function frameSides(camera: Camera): readonly Vec3[] {
  const slopes = pyramidOf(camera);
  if (slopes === null) return [];
  return sidesOf(axesOf(camera), slopes.across, slopes.down);
}

const sidesOf = ({ right, down, forward }: Axes, across: number, below: number): readonly Vec3[] => [
  subtract(scale(forward, across), right),
  add(scale(forward, across), right),
  subtract(scale(forward, below), down),
  add(scale(forward, below), down),
];

/**
 * Half-planes of which all that lies in all of them lies in a bent frame. A target at x/z = tan θ of the middle of a side, or
 * less, has its image within that side, however far off it lies along it, since g/tan falls with the angle for k < 1.
 * @returns null where a side lies 90° off the axis or more
 */
export function sureHalfPlanes(
  { k, focalLength, sensor, ...camera }: Camera,
  footing: Footing,
): HalfPlanes | null {
  const across = angleOfLawRad(sensor.width / 2 / focalLength, k);
  const down = angleOfLawRad(sensor.height / 2 / focalLength, k);
  if (across === null || down === null || Math.max(across, down) >= FLAT) return null;
  const cut: [number, number, number][] = [];
  for (const side of sidesOf(axesOf(camera), Math.tan(across), Math.tan(down))) {
    const half = halfPlaneOf(side, footing);
    if (half === 'none') return null;
    if (half !== 'all') cut.push(half);
  }
  return cut;
}

/** The greatest angle off the axis in a frame, rad. */
export function frameAngle({ k, focalLength, sensor }: Camera): number {
  return angleOfLawRad(Math.hypot(sensor.width, sensor.height) / 2 / focalLength, k) ?? greatestAngleRad(k);
}

/**
 * Greatest x/z and y/z in the frame, along the camera's right and down. Along a side of the frame x/z = tan θ · x/ρ(θ), which
 * grows with θ for k < 1: the corner has the most. Null where the corner lies 90° off the axis or more.
 */
function pyramidOf({
  sensor,
  focalLength,
  k,
}: Camera): { readonly across: number; readonly down: number } | null {
  const [x, y] = [sensor.width / 2, sensor.height / 2];
  if (k === 1) return { across: x / focalLength, down: y / focalLength };
  const corner = Math.hypot(x, y);
  const thetaRad = angleOfLawRad(corner / focalLength, k);
  // A frame larger than the image circle reaches the end of the law.
  if (thetaRad === null || thetaRad >= FLAT) return null;
  const gain = Math.tan(thetaRad) / corner;
  return { across: gain * x, down: gain * y };
}

/** The half-plane of targets X with normal · X ≥ 0, for a plane through the lens. */
function halfPlaneOf(normal: Vec3, { plane, delta }: Footing): [number, number, number] | 'all' | 'none' {
  const a = dot(normal, plane.u);
  const b = dot(normal, plane.v);
  const k = dot(normal, plane.normal) * delta;
  const size = Math.hypot(a, b);
  if (size <= 1e-13 * Math.abs(dot(normal, plane.normal))) return k >= 0 ? 'all' : 'none';
  return [a / size, b / size, k / size];
}
