import type { Exposure, Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/**
 * Says how long a camera exposes a picture by day and by night, ms; null: not known.
 * @throws RangeError on an unknown camera, or a time that is not finite and above 0
 */
export function setExposure(plan: Plan, id: string, exposure: Exposure | null): Plan {
  if (exposure && !(exposure.day > 0 && exposure.night > 0))
    throw new RangeError(`exposures lie above 0, got ${exposure.day} and ${exposure.night}`);
  return withCamera(plan, id, (camera) =>
    changed(camera, {
      exposure: camera.exposure && exposure ? changed(camera.exposure, exposure) : exposure,
    }),
  );
}
