import { add, distance, scale, type Vec3 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { solidsOf } from '../../../model/solids.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Pointed } from '../pointed.ts';

/** A point that is measured from or to. */
export interface MeasurePoint {
  readonly at: Vec3;
  /** It is a corner of something, not just a place on it. */
  readonly corner: boolean;
}

const REACH = { mouse: 12, pen: 12, touch: 22 } as const;

/** What a pointer means to measure: a seen corner of the thing pointed at within reach, else the very place. */
export function measurePoint(plan: Plan, at: Pointed): MeasurePoint | null {
  const { struck, screen, ray } = at;
  if (!struck) return onGround(plan, ray);
  const structure = struck.structure === null ? undefined : plan.structures[struck.structure];
  if (structure && !at.free) {
    let best: Vec3 | null = null;
    let nearest: number = REACH[at.by];
    for (const { positions } of solidsOf(structure).solids)
      for (let k = 0; k + 2 < positions.length; k += 3) {
        const corner: Vec3 = [positions[k] ?? 0, positions[k + 1] ?? 0, positions[k + 2] ?? 0];
        const spot = screen.place(corner);
        if (!spot) continue;
        const off = Math.hypot(spot[0] - screen.spot[0], spot[1] - screen.spot[1]);
        if (
          off > nearest ||
          (best && off === nearest && distance(ray.from, corner) > distance(ray.from, best))
        )
          continue;
        if (!screen.seen(corner)) continue;
        [best, nearest] = [corner, off];
      }
    if (best) return { at: best, corner: true };
  }
  return { at: struck.point, corner: false };
}

function onGround(plan: Plan, { from, along }: Pointed['ray']): MeasurePoint | null {
  const t = (groundHeight(plan.ground) - from[2]) / along[2];
  return t > 0 && Number.isFinite(t) ? { at: add(from, scale(along, t)), corner: false } : null;
}
