import { turn } from '../../base/angle.ts';
import { limitsOf } from '../../optics/mount.ts';
import { turnCamera } from '../../plan/commands/aimWithin.ts';
import { setRange } from '../../plan/commands/setRange.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import type { Setting } from './setting.ts';

/** The bearing in which a camera looks. */
export const panSetting = ({ id, pan }: PlanCamera): Setting => ({
  key: 'pan',
  label: 'Pan',
  measure: 'bearing',
  bounds: LIMITS.bearing,
  value: pan,
  change: (plan, value) => turnCamera(plan, id, { pan: value }),
});

/**
 * The same as the angle from straight out of the wall, right positive as seen from behind the camera.
 * @param straight bearing straight out, °
 */
export function panOutSetting({ id, mount, pan }: PlanCamera, straight: number): Setting {
  const most = limitsOf(mount).pan ?? LIMITS.turn.most;
  return {
    key: 'pan out',
    label: 'From straight out',
    measure: 'angle',
    bounds: { least: -most, most },
    value: turn(straight, pan),
    change: (plan, value) => turnCamera(plan, id, { pan: straight + value }),
  };
}

/** Down from level, as far as the mount lets it. */
export function tiltSetting({ id, mount, tilt }: PlanCamera): Setting {
  const held = limitsOf(mount).tilt;
  return {
    key: 'tilt',
    label: 'Tilt',
    measure: 'angle',
    bounds: held ? { least: -held.up, most: held.down } : LIMITS.tilt,
    value: tilt,
    change: (plan, value) => turnCamera(plan, id, { tilt: value }),
  };
}

/** About the axis, as far as the mount lets it. */
export function rollSetting({ id, mount, roll }: PlanCamera): Setting {
  const held = limitsOf(mount).roll;
  return {
    key: 'roll',
    label: 'Roll',
    measure: 'angle',
    bounds: held === null ? LIMITS.roll : { least: -held, most: held },
    value: roll,
    change: (plan, value) => turnCamera(plan, id, { roll: value }),
  };
}

/** How far from the lens a camera counts. */
export const rangeSetting = ({ id, range }: PlanCamera): Setting => ({
  key: 'range',
  label: 'Counts as far as',
  measure: 'length',
  bounds: LIMITS.range,
  value: range,
  change: (plan, value) => setRange(plan, id, value),
});
