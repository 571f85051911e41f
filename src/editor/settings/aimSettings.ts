import { aimCamera } from '../../plan/commands/aimCamera.ts';
import { setRange } from '../../plan/commands/setRange.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import type { Setting } from './setting.ts';

/** Where a camera looks: a bearing, down from level, and turned about its axis. */
export const panSetting = ({ id, pan }: PlanCamera): Setting => ({
  key: 'pan',
  label: 'Pan',
  measure: 'bearing',
  bounds: LIMITS.bearing,
  value: pan,
  change: (plan, value) => aimCamera(plan, id, { pan: value }),
});

export const tiltSetting = ({ id, tilt }: PlanCamera): Setting => ({
  key: 'tilt',
  label: 'Tilt',
  measure: 'angle',
  bounds: LIMITS.tilt,
  value: tilt,
  change: (plan, value) => aimCamera(plan, id, { tilt: value }),
});

export const rollSetting = ({ id, roll }: PlanCamera): Setting => ({
  key: 'roll',
  label: 'Roll',
  measure: 'angle',
  bounds: LIMITS.roll,
  value: roll,
  change: (plan, value) => aimCamera(plan, id, { roll: value }),
});

/** How far from the lens a camera counts. */
export const rangeSetting = ({ id, range }: PlanCamera): Setting => ({
  key: 'range',
  label: 'Counts as far as',
  measure: 'length',
  bounds: LIMITS.range,
  value: range,
  change: (plan, value) => setRange(plan, id, value),
});
