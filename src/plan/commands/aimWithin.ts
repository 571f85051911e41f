import { accept, refuse, type Outcome } from '../../base/fault.ts';
import { heldAim } from '../heldAim.ts';
import type { Plan } from '../plan.ts';
import { aimCamera, type Aim } from './aimCamera.ts';

/**
 * Turns a camera as far as its mount lets it: for a hand that drags.
 * @throws as `aimCamera`
 */
export function aimWithin(plan: Plan, id: string, aim: Aim): Plan {
  const camera = Object.hasOwn(plan.cameras, id) ? plan.cameras[id] : undefined;
  return aimCamera(plan, id, camera ? heldAim(plan, camera, aim).aim : aim);
}

/**
 * Turns a camera, unless its mount does not let it: for a number that is typed.
 * @throws as `aimCamera`
 */
export function turnCamera(plan: Plan, id: string, aim: Aim): Outcome<Plan> {
  const camera = Object.hasOwn(plan.cameras, id) ? plan.cameras[id] : undefined;
  const stops = camera ? heldAim(plan, camera, aim).stops : [];
  return stops.length > 0 ? refuse(...stops) : accept(aimCamera(plan, id, aim));
}
