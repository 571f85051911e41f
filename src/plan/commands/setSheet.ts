import type { DataSheet, Housing } from '../../optics/device.ts';
import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/**
 * Changes what else a camera's data sheet tells; null: not known.
 * @throws RangeError on an unknown camera or a number that is not finite
 */
export const setSheet = (plan: Plan, id: string, change: Partial<DataSheet>): Plan =>
  withCamera(plan, id, (camera) => changed(camera, { sheet: changed(camera.sheet, change) }));

/**
 * Says of what shape a camera is; null: not known.
 * @throws RangeError on an unknown camera
 */
export const setHousing = (plan: Plan, id: string, housing: Housing | null): Plan =>
  withCamera(plan, id, (camera) => changed(camera, { housing }));
