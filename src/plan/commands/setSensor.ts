import type { Extent } from '../../optics/camera.ts';
import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/**
 * Changes the active area (mm) of a camera's sensor, the pixels of the recorded picture, or both.
 * @throws RangeError on an unknown camera or a size that is not finite and above 0
 */
export function setSensor(
  plan: Plan,
  id: string,
  { sensor, frame }: { readonly sensor?: Partial<Extent>; readonly frame?: Partial<Extent> },
): Plan {
  for (const value of [sensor?.width, sensor?.height, frame?.width, frame?.height])
    if (value !== undefined && !(value > 0))
      throw new RangeError(`a sensor needs sizes above 0, got ${value}`);
  return withCamera(plan, id, (camera) => {
    const { device } = camera;
    const modes = device.modes.map((mode) => {
      if (mode.id !== device.recorded) return mode;
      const next = changed(mode.frame, frame ?? {});
      return next === mode.frame ? mode : { ...mode, frame: next };
    });
    const same = modes.every((mode, index) => mode === device.modes[index]);
    const next = changed(device, {
      sensor: changed(device.sensor, sensor ?? {}),
      modes: same ? device.modes : modes,
    });
    return next === device ? camera : { ...camera, device: next };
  });
}
