import { add, dot, scale, subtract, type Vec3 } from '../base/vector.ts';
import type { Plane } from '../base/plane.ts';
import type { FRAME_EDGE } from '../sight/sight.ts';

/** The site point at plane coordinates a, b. */
export const pointOn = ({ origin, u, v }: Plane, a: number, b: number): Vec3 => [
  origin[0] + a * u[0] + b * v[0],
  origin[1] + a * u[1] + b * v[1],
  origin[2] + a * u[2] + b * v[2],
];

/** Where a ray meets a plane ahead of its start; null where it does not. */
export function meetPlane(
  { from, along }: { readonly from: Vec3; readonly along: Vec3 },
  { origin, normal }: Plane,
): Vec3 | null {
  const far = dot(subtract(origin, from), normal) / dot(along, normal);
  return Number.isFinite(far) && far > 0 ? add(from, scale(along, far)) : null;
}

/** What lies beyond an outline piece at the edge of the frame: the number that sight gives it. */
export const FRAME_EDGE_CODE: typeof FRAME_EDGE = -1;
