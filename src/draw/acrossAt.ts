import type { Assessment } from '../assess/assessment.ts';
import type { Vec3 } from '../base/vector.ts';
import { densityAlong } from '../optics/density.ts';

/** Pixels per metre across a wall, roof or patch at a point of it, along its own horizontal; null on level targets. */
export function acrossAt({ surface, scene }: Assessment, id: string, point: Vec3): number | null {
  const camera = surface && scene.cameras.find((one) => one.id === id);
  return surface && camera ? densityAlong(camera, point, surface.plane.u) : null;
}
