import { add, distance, dot, scale, subtract, type Vec3 } from '../base/vector.ts';
import { withinRings } from '../draw/region.ts';
import type { Pointed } from '../editor/tools/pointed.ts';
import type { FlatSurface } from '../model/surface.ts';

/** A spot is asked about a hair before its face, so that it does not lie inside the wall, m. */
const BEFORE = 1e-5;
/** What is struck nearer than this before a face hides it from the viewer, m: panes and sills are a part of the wall. */
const CLEAR = 0.05;

/** The spot of a wall, a roof face or a patch under a pointer; null beside it, from behind, and where something stands before it. */
export function spotOnSurface({ plane, rings }: FlatSurface, { ray, struck }: Pointed): Vec3 | null {
  const facing = -dot(ray.along, plane.normal);
  if (facing <= 1e-9) return null;
  const far = dot(subtract(ray.from, plane.origin), plane.normal) / facing;
  if (far <= 0) return null;
  const spot = add(ray.from, scale(ray.along, far));
  const away = subtract(spot, plane.origin);
  const [a, b] = [dot(away, plane.u), dot(away, plane.v)];
  if (!rings.some((ring) => withinRings([Float64Array.from(ring.flat())], a, b))) return null;
  if (struck && distance(ray.from, struck.point) < far - CLEAR) return null;
  return add(spot, scale(plane.normal, BEFORE));
}
