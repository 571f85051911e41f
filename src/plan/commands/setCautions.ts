import { LIMITS } from '../limits.ts';
import type { Plan } from '../plan.ts';
import { withCamera } from './withCamera.ts';

/** Notes that a person has looked at a caution of a camera, by its id, or takes the note back. @throws RangeError on an unknown camera */
export function tickCaution(plan: Plan, camera: string, caution: string, looked: boolean): Plan {
  return withCamera(plan, camera, (set) => {
    const { ticked } = set.card;
    if (ticked.includes(caution) === looked) return set;
    const next = looked ? [...ticked, caution] : ticked.filter((id) => id !== caution);
    return { ...set, card: { ...set.card, ticked: next } };
  });
}

/**
 * Sets a threshold of cautions, by its id; null: the default again.
 * @throws RangeError on a number outside the limits of the plan file
 */
export function setThreshold(plan: Plan, id: string, value: number | null): Plan {
  const { least, most } = LIMITS.threshold;
  if (value !== null && !(value >= least && value <= most))
    throw new RangeError(`a threshold lies between ${least} and ${most}, got ${value}`);
  const { [id]: before, ...others } = plan.settings.cautions;
  if (before === (value ?? undefined)) return plan;
  const cautions = value === null ? others : { ...plan.settings.cautions, [id]: value };
  return { ...plan, settings: { ...plan.settings, cautions } };
}
