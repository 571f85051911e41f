import type { DeviceEntry } from '../devices/deviceEntry.ts';
import type { Plan, PlanCamera } from '../plan.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/**
 * Puts another kind of camera up in the same place: sensor, pictures, lens, light, sheet, and how far it turns there. Its aim
 * stays, even where it now lies past what it turns to: then the sheet says so.
 * @throws RangeError on an unknown camera
 */
export const setDevice = (plan: Plan, id: string, entry: DeviceEntry): Plan =>
  withCamera(plan, id, (camera) => {
    const { mount } = camera;
    const limits = mount.kind === 'soffit' ? entry.limits.below : entry.limits.wall;
    return changed(camera, {
      device: entry.device,
      housing: entry.housing,
      sheet: { ...entry.sheet, name: entry.name },
      infrared: entry.infrared,
      exposure: entry.exposure,
      mount: 'limits' in mount ? { ...mount, limits } : mount,
    });
  });

/** A camera of a plan as an entry of its own: what it is, without where it hangs. */
export function entryOf(camera: PlanCamera, id: string, name: string): DeviceEntry {
  const { device, housing, infrared, exposure, mount } = camera;
  const { name: _, ...sheet } = camera.sheet;
  const limits = 'limits' in mount ? mount.limits : { pan: null, tilt: null, roll: null };
  const basis = `Taken from ${camera.name}`;
  return {
    id,
    name,
    basis,
    housing,
    device,
    sheet,
    infrared,
    exposure,
    limits: { wall: limits, below: limits },
  };
}
