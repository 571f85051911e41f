import { sin } from '../../../base/angle.ts';
import type { Vec2 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Pointed } from '../pointed.ts';

/** A plane seen under a flatter angle than this is not drawn on, °. */
const FLATTEST = 7;

/** Words where the working plane is seen edge-on. */
export const EDGE_ON = 'Seen edge-on. Turn the view, or type the number.';

/** Where the pointer's ray meets a level plane; null where it never does, or where the plane is seen edge-on. */
export function pointAtLevel({ ray, screen }: Pointed, level: number): Vec2 | null {
  const down = ray.along[2];
  if (!screen.plan && Math.abs(down) < sin(FLATTEST)) return null;
  const t = (level - ray.from[2]) / down;
  if (!(t > 0 && Number.isFinite(t))) return null;
  return [ray.from[0] + t * ray.along[0], ray.from[1] + t * ray.along[1]];
}

/** The place on the ground that the pointer means; what stands before it does not count. */
export function groundPoint(plan: Plan, at: Pointed): Vec2 | null {
  const { struck } = at;
  if (plan.ground.kind !== 'flat' && struck?.structure === null) return [struck.point[0], struck.point[1]];
  return pointAtLevel(at, groundHeight(plan.ground));
}
