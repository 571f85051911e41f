import type { PlanSettings } from './plan.ts';

/**
 * What a new plan is judged by. Walking speed, face height and limits, and the hands' tolerances are common practice,
 * no source; so are the least light, for which there is no standard, and the angle at which mesh closes up; the stature lies within the 1.64 to 1.76 m of older public guidance.
 */
export const defaultSettings: PlanSettings = {
  edition: 'iec-62676-4-2014',
  units: 'metres',
  stature: 1.7,
  walkingSpeed: 1.4,
  faceHeight: 1.6,
  plateHeight: 0.5,
  faceLimits: { identify: { above: 20, side: 45 }, recognise: { above: 30, side: 60 } },
  tolerances: { pan: 2, tilt: 1, place: 0.05, focalLengthPercent: 3 },
  leastLux: 1,
  screenClosing: 30,
  cautions: {},
};
