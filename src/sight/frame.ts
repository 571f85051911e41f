import { dot, scale, subtract, add, type Vec3 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import { axesOf } from '../optics/projection.ts';
import type { Footing } from './footing.ts';
import type { HalfPlanes } from './halfPlanes.ts';

/**
 * The frame of a rectilinear camera on a plane as four half-planes (fewer where a side runs parallel to the plane and
 * leaves it whole).
 * @returns null where the frame misses the plane, or where the lens is not rectilinear: then the frame has curved sides
 */
export function frameHalfPlanes(camera: Camera, footing: Footing): HalfPlanes | null {
  if (camera.k !== 1) return null;
  const { right, down, forward } = axesOf(camera);
  const tx = camera.sensor.width / 2 / camera.focalLength;
  const ty = camera.sensor.height / 2 / camera.focalLength;
  const sides: readonly Vec3[] = [
    subtract(scale(forward, tx), right),
    add(scale(forward, tx), right),
    subtract(scale(forward, ty), down),
    add(scale(forward, ty), down),
  ];
  const cut: [number, number, number][] = [];
  for (const side of sides) {
    const half = halfPlaneOf(side, footing);
    if (half === 'none') return null;
    if (half !== 'all') cut.push(half);
  }
  return cut;
}

/** The half-plane of targets X with normal · X ≥ 0, for a plane through the lens. */
export function halfPlaneOf(normal: Vec3, { plane, delta }: Footing): [number, number, number] | 'all' | 'none' {
  const a = dot(normal, plane.u);
  const b = dot(normal, plane.v);
  const k = dot(normal, plane.normal) * delta;
  const size = Math.hypot(a, b);
  if (size <= 1e-13 * Math.abs(dot(normal, plane.normal))) return k >= 0 ? 'all' : 'none';
  return [a / size, b / size, k / size];
}
