import { PLANE_CLEARANCE } from '../base/tolerance.ts';
import { dot, subtract, type Vec2, type Vec3 } from '../base/vector.ts';
import type { Plane } from '../base/plane.ts';

/**
 * A lens over a target plane. A target is X = Δ·n + p·u + q·v from the lens, with p, q relative to the foot: the point
 * of the plane nearest to the lens.
 */
export interface Footing {
  readonly eye: Vec3;
  readonly plane: Plane;
  /** Plane coordinates of the foot. */
  readonly foot: Vec2;
  /** Signed distance from the lens to the plane along its normal, m; kept off 0, where there is no shadow map. */
  readonly delta: number;
}

/** The footing of a lens; one nearer to the plane than PLANE_CLEARANCE counts as standing that far in front of it. */
export function footingOf(eye: Vec3, plane: Plane): Footing {
  const away = subtract(plane.origin, eye);
  const delta = dot(plane.normal, away);
  const kept = Math.abs(delta) < PLANE_CLEARANCE ? (delta > 0 ? PLANE_CLEARANCE : -PLANE_CLEARANCE) : delta;
  return { eye, plane, foot: [-dot(plane.u, away), -dot(plane.v, away)], delta: kept };
}
