import type { Infrared } from '../../optics/light.ts';
import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/**
 * Gives a camera its own light: how far it reaches (m) and its full angle (°); null takes it away.
 * @throws RangeError on an unknown camera, or a range or beam that is not finite and above 0
 */
export function setInfrared(plan: Plan, id: string, infrared: Infrared | null): Plan {
  if (infrared && !(infrared.range > 0 && infrared.beam > 0))
    throw new RangeError(`range and beam lie above 0, got ${infrared.range} and ${infrared.beam}`);
  return withCamera(plan, id, (camera) =>
    changed(camera, {
      infrared: camera.infrared && infrared ? changed(camera.infrared, infrared) : infrared,
    }),
  );
}
