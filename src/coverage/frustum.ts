import { dot, subtract, type Vec3 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import { siteRayFromImage } from '../optics/projection.ts';
import type { Plane } from '../base/plane.ts';
import type { Segments } from '../sight/segment.ts';
import type { Frustum } from './coverage.ts';

/** Rays along each edge of the frame. */
const STEPS = 24;

/** The frame in space: its corners, its edge and its axis, each up to the first solid, the target plane or the range. */
export function frustumOf(camera: Camera, plane: Plane, segments: Segments): Frustum {
  const { width, height } = camera.frame;
  const corners = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ] as const;
  const land = (u: number, v: number): Vec3 | null => {
    const ray = siteRayFromImage(camera, { u, v });
    return ray === null ? null : endOf(camera, ray, plane, segments).point;
  };
  const kept = (points: readonly (Vec3 | null)[]): Vec3[] => points.filter((point) => point !== null);
  const trace = corners.map(([u0, v0], edge) => {
    const [u1, v1] = corners[(edge + 1) % 4] ?? [u0, v0];
    return kept(
      Array.from({ length: STEPS + 1 }, (_, step) =>
        land(u0 + ((u1 - u0) * step) / STEPS, v0 + ((v1 - v0) * step) / STEPS),
      ),
    );
  });
  const axis = siteRayFromImage(camera, { u: width / 2, v: height / 2 });
  const end = axis === null ? { point: camera.eye, meets: null } : endOf(camera, axis, plane, segments);
  return {
    corners: kept(corners.map(([u, v]) => land(u, v))),
    trace,
    axisEnd: end.point,
    axisMeets: end.meets,
  };
}

/** Where a ray ends, and the solid that it meets: −1 the plane, null nothing within range. */
function endOf(
  { eye, range }: Camera,
  ray: Vec3,
  plane: Plane,
  segments: Segments,
): { readonly point: Vec3; readonly meets: number | null } {
  const at = (share: number): Vec3 => [
    eye[0] + ray[0] * range * share,
    eye[1] + ray[1] * range * share,
    eye[2] + ray[2] * range * share,
  ];
  const down = dot(plane.normal, ray);
  const toPlane = down === 0 ? Infinity : dot(plane.normal, subtract(plane.origin, eye)) / down / range;
  const share = toPlane > 0 && toPlane < 1 ? toPlane : 1;
  const hit = segments.firstHit(eye, at(share), 'solid');
  if (hit !== null) return { point: at(share * hit.share), meets: hit.solid };
  return { point: at(share), meets: share < 1 ? -1 : null };
}
