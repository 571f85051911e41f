import type { Vec2 } from '../../base/vector.ts';
import type { Plan } from '../../plan/plan.ts';
import { attempt, type Attempt } from '../shaping/attempt.ts';
import { changeTo, valueOf, type Pull } from './pull.ts';

/** A pull stops on whole steps of this, m or °. */
const STEP = 0.001;

/** How far a pull goes: as far as it was asked, or to the last value on the way there that fits. */
export interface Reached {
  readonly plan: Plan;
  readonly value: Vec2;
  /** Why it stops short; null where it does not. */
  readonly stopped: Extract<Attempt, { ok: false }> | null;
}

/**
 * Takes a handle as far towards a value as the plan allows, on the straight way from where it was at the press. What
 * crosses itself is not followed on that way: it stays at `last`.
 */
export function farthest(plan: Plan, pull: Pull, asked: Vec2, last: Vec2): Reached {
  const whole = attempt(plan, changeTo(pull, asked));
  if (whole.ok) return { plan: whole.plan, value: asked, stopped: null };
  if (pull.kind === 'plane' && pull.ground) {
    const stays = attempt(plan, changeTo(pull, last));
    return { plan: stays.ok ? stays.plan : plan, value: stays.ok ? last : pull.value, stopped: whole };
  }
  const start = valueOf(pull);
  const run: Vec2 = [asked[0] - start[0], asked[1] - start[1]];
  const size = Math.hypot(...run);
  // The last asked value that is a whole step; a limit typed to the millimetre is met exactly.
  const at = (steps: number): Vec2 => {
    const share = Math.min(1, (steps * STEP) / size);
    return [rounded(start[0] + run[0] * share), rounded(start[1] + run[1] * share)];
  };
  let [fits, fails] = [0, Math.ceil(size / STEP)];
  let best = attempt(plan, changeTo(pull, start));
  let why = whole;
  while (fails - fits > 1) {
    const middle = Math.floor((fits + fails) / 2);
    const tried = attempt(plan, changeTo(pull, at(middle)));
    if (tried.ok) [fits, best] = [middle, tried];
    else [fails, why] = [middle, tried];
  }
  return { plan: best.ok ? best.plan : plan, value: fits === 0 ? start : at(fits), stopped: why };
}

const rounded = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
