import { setExposure } from '../../plan/commands/setExposure.ts';
import { setInfrared } from '../../plan/commands/setInfrared.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Setting } from './setting.ts';

/** A first infrared lamp: what a small camera's sheet prints; common practice, no source. */
const FIRST_INFRARED = { range: 20, beam: 100 } as const;
/** First exposures, ms: a bright day, and a dim night at 25 pictures a second; common practice, no source. */
const FIRST_EXPOSURE = { day: 2, night: 33 } as const;

/** Gives a camera infrared of its own, or takes it away. */
export const switchInfrared = (plan: Plan, { id, infrared }: PlanCamera): Plan =>
  setInfrared(plan, id, infrared ? null : FIRST_INFRARED);

/** Says how long a camera exposes, or that it is not known. */
export const switchExposure = (plan: Plan, { id, exposure }: PlanCamera): Plan =>
  setExposure(plan, id, exposure ? null : FIRST_EXPOSURE);

/** Range and beam of a camera's own infrared; none where it has none. */
export function infraredSettings({ id, infrared }: PlanCamera): readonly Setting[] {
  if (infrared === null) return [];
  return [
    {
      key: 'infraredRange',
      label: 'Infrared to',
      measure: 'length',
      bounds: LIMITS.range,
      value: infrared.range,
      change: (plan, range) => setInfrared(plan, id, { ...infrared, range }),
    },
    {
      key: 'infraredBeam',
      label: 'Infrared beam',
      measure: 'angle',
      bounds: LIMITS.beam,
      value: infrared.beam,
      change: (plan, beam) => setInfrared(plan, id, { ...infrared, beam }),
    },
  ];
}

/** How long a picture is exposed by day and at night; none where it is not known. */
export function exposureSettings({ id, exposure }: PlanCamera): readonly Setting[] {
  if (exposure === null) return [];
  return (['day', 'night'] as const).map((when) => ({
    key: `exposure-${when}`,
    label: when === 'day' ? 'Exposure by day' : 'Exposure at night',
    measure: 'milliseconds',
    bounds: LIMITS.exposure,
    value: exposure[when],
    change: (plan, value) => setExposure(plan, id, { ...exposure, [when]: value }),
  }));
}
