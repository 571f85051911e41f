import { bearing, degreesFromRad, turn } from '../base/angle.ts';
import type { Fault } from '../base/fault.ts';
import { groundHeight } from '../model/ground.ts';
import { placeMount } from '../model/mounting.ts';
import type { Mount } from '../optics/mount.ts';
import type { Aim } from './commands/aimCamera.ts';
import type { Plan, PlanCamera } from './plan.ts';

/**
 * The bearing straight out of what carries a mount, °: square to the wall, of a corner between its walls, of a pole the way
 * that its bracket points; under a canopy out over the edge that it is measured from. Null where it is fixed to nothing, or what carried it is gone.
 */
export function straightOut(plan: Plan, mount: Mount): number | null {
  if (mount.kind === 'loose') return null;
  if (mount.kind === 'pole') return bearing(mount.facing);
  const placed = placeMount(mount, plan.structures, groundHeight(plan.ground));
  if (!placed.ok || !placed.value.outward) return null;
  const [x, y] = placed.value.outward;
  // The face of a canopy's underside runs in from its edge.
  const inwards = plan.structures[mount.host]?.kind === 'canopy';
  return bearing(degreesFromRad(Math.atan2(x, y)) + (inwards ? 180 : 0));
}

/** A hair past a limit is the limit: typed tenths and worked-out bearings differ by their last bits. */
const HAIR = 1e-6;

/**
 * An aim kept to what the camera's mount lets it turn to, and a fault for each angle that it stops; angles that are not asked
 * for are left as they are.
 */
export function heldAim(
  plan: Plan,
  { name, mount }: PlanCamera,
  asked: Aim,
): { readonly aim: Aim; readonly stops: readonly Fault[] } {
  if (!('limits' in mount)) return { aim: asked, stops: [] };
  const { limits } = mount;
  const stops: Fault[] = [];
  const stop = (angle: 'pan' | 'tilt' | 'roll', given: string, allowed: string) =>
    stops.push({ code: `aim.${angle}`, path: [angle], given, allowed, subject: name });
  const aim: { -readonly [K in keyof Aim]: Aim[K] } = { ...asked };
  const straight = asked.pan === undefined || limits.pan === null ? null : straightOut(plan, mount);
  if (asked.pan !== undefined && limits.pan !== null && straight !== null) {
    const off = turn(straight, asked.pan);
    if (Math.abs(off) > limits.pan + HAIR) {
      aim.pan = bearing(straight + Math.sign(off) * limits.pan);
      stop('pan', `${shown(Math.abs(off))}° ${off > 0 ? 'right' : 'left'}`, `${shown(limits.pan)}°`);
    }
  }
  if (asked.tilt !== undefined && limits.tilt !== null) {
    const { up, down } = limits.tilt;
    if (asked.tilt > down + HAIR || asked.tilt < -up - HAIR) {
      aim.tilt = asked.tilt > 0 ? down : -up;
      const way = asked.tilt > 0 ? 'down' : 'up';
      stop('tilt', `${shown(Math.abs(asked.tilt))}° ${way}`, `${shown(asked.tilt > 0 ? down : up)}°`);
    }
  }
  if (asked.roll !== undefined && limits.roll !== null) {
    const roll = turn(0, asked.roll);
    if (Math.abs(roll) > limits.roll + HAIR) {
      aim.roll = Math.sign(roll) * limits.roll;
      stop('roll', `${shown(roll)}°`, `${shown(limits.roll)}°`);
    }
  }
  return { aim, stops };
}

const shown = (degrees: number): string => String(Math.round(degrees * 10) / 10);
