import { add, dot, scale, subtract, type Vec3 } from '../base/vector.ts';
import type { Plane } from '../base/plane.ts';
import type { FRAME_EDGE } from '../sight/sight.ts';

export { pointOn } from '../base/plane.ts';

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
