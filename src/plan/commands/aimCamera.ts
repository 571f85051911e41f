import { bearing, turn } from '../../base/angle.ts';
import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/** Where a camera shall look, °: pan a bearing, tilt down, roll clockwise seen from behind. */
export interface Aim {
  readonly pan?: number;
  readonly tilt?: number;
  readonly roll?: number;
}

/**
 * Turns a camera. Pan is kept in [0, 360), roll in (−180, 180].
 * @throws RangeError on an unknown camera, a number that is not finite, or a tilt past straight up or down
 */
export function aimCamera(plan: Plan, id: string, { pan, tilt, roll }: Aim): Plan {
  if (tilt !== undefined && Math.abs(tilt) > 90)
    throw new RangeError(`tilt must lie within ±90°, got ${tilt}`);
  return withCamera(plan, id, (camera) =>
    changed(camera, {
      ...(pan === undefined ? {} : { pan: bearing(pan) }),
      ...(tilt === undefined ? {} : { tilt }),
      ...(roll === undefined ? {} : { roll: turn(0, roll) }),
    }),
  );
}
