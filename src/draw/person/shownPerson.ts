import { createPersonAt, type PersonSeen, type StandingAsked } from '../../assess/person/personAt.ts';
import { thresholdOf } from '../../assess/cautions/thresholds.ts';
import type { Assessment } from '../../assess/assessment.ts';
import type { Looks } from '../../coverage/target.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { PARCEL_MIDDLE } from './parcel.ts';
import type { PersonLook } from './personPictures.ts';
import type { PersonNamed } from './personWords.ts';

/** Who stands where, and through which lens they are seen. */
type Shown = Pick<StandingAsked, 'camera' | 'at' | 'looks' | 'lens'>;

/** A person of a plan as it is assessed; null where the scene has no such camera. */
export type ShowPerson = (assessment: Assessment, plan: Plan, shown: Shown) => PersonSeen | null;

/** Remembers, by its identity, what it laid out of the scene that is shown. */
export function createShowPerson(): ShowPerson {
  const personAt = createPersonAt();
  return (assessment, plan, shown) =>
    personAt(assessment, plan, {
      ...shown,
      parts: [
        { part: 'face', height: plan.settings.faceHeight },
        { part: 'plate', height: plan.settings.plateHeight },
        { part: 'parcel', height: PARCEL_MIDDLE },
      ],
    });
}

export type Moving = 'still' | 'walks' | 'runs';

/** By day, where the data sheet states no exposure, ms: common practice, no source. */
const DAY_EXPOSURE = 10;

/** How somebody is looked at by a camera of a plan. An exposure that is not stated counts at night as cautions count it. */
export function lookOf(
  { settings }: Plan,
  { exposure, infrared }: PlanCamera,
  { looks, cap, moving }: { readonly looks: Looks; readonly cap: boolean; readonly moving: Moving },
): PersonLook {
  const { walkingSpeed } = settings;
  const person = { still: 0, walks: walkingSpeed, runs: thresholdOf(settings, 'pictures.runningSpeed') }[
    moving
  ];
  return {
    looks,
    cap,
    speed: { person, car: moving === 'still' ? 0 : thresholdOf(settings, 'smear.plate.speed') },
    exposure: exposure ?? { day: DAY_EXPOSURE, night: thresholdOf(settings, 'smear.night.exposure') },
    infraredRange: infrared?.range ?? null,
  };
}

/** What its words are taken from. */
export const personNamed = ({ scene, edition }: Assessment, { settings }: Plan): PersonNamed => ({
  solids: scene.solids,
  edition,
  settings,
});
