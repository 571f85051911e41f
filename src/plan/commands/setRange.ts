import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/**
 * Sets how far from the lens a camera counts, m.
 * @throws RangeError on an unknown camera or a range that is not finite and above 0
 */
export function setRange(plan: Plan, id: string, range: number): Plan {
  if (!(range > 0)) throw new RangeError(`a range lies above 0, got ${range}`);
  return withCamera(plan, id, (camera) => changed(camera, { range }));
}
