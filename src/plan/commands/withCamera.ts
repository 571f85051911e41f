import type { Plan, PlanCamera } from '../plan.ts';

/**
 * The plan with one camera changed; the same plan where the change leaves it the same object.
 * @throws RangeError where the plan has no such camera
 */
export function withCamera(plan: Plan, id: string, change: (camera: PlanCamera) => PlanCamera): Plan {
  const camera = Object.hasOwn(plan.cameras, id) ? plan.cameras[id] : undefined;
  if (!camera) throw new RangeError(`the plan has no camera ${id}`);
  const next = change(camera);
  return next === camera ? plan : { ...plan, cameras: { ...plan.cameras, [id]: next } };
}
