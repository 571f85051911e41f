import { accept, type Outcome } from '../../base/fault.ts';
import type { Vec2 } from '../../base/vector.ts';
import { mirrorIn, slideBy, turnAbout, type Motion } from '../motion/motion.ts';
import { movedThings } from '../motion/movedThings.ts';
import type { Plan } from '../plan.ts';
import { sound } from './admitted.ts';
import type { Movable } from './thing.ts';

const moved = (plan: Plan, things: readonly Movable[], motion: Motion): Outcome<Plan> =>
  things.length === 0 ? accept(plan) : sound(plan, movedThings(plan, things, motion));

/**
 * Moves things so far east and north, m. Cameras go with the structure that holds them; one moved without it stays.
 * @returns refused where something would be farther out than a site reaches
 * @throws  RangeError where the plan has no such thing
 */
export const moveThings = (plan: Plan, things: readonly Movable[], by: Vec2): Outcome<Plan> =>
  by[0] === 0 && by[1] === 0 ? accept(plan) : moved(plan, things, slideBy(by));

/**
 * Turns things about a place, ° clockwise seen from above: ridges, vehicles, pictures, and what the cameras look at with
 * them. A camera whose structure stays turns on the spot.
 * @returns refused where something would be farther out than a site reaches
 * @throws  RangeError where the plan has no such thing
 */
export const turnThings = (
  plan: Plan,
  things: readonly Movable[],
  about: Vec2,
  degrees: number,
): Outcome<Plan> => (degrees % 360 === 0 ? accept(plan) : moved(plan, things, turnAbout(about, degrees)));

/**
 * Mirrors things in the line through two places: what was on the left of a wall is on its right. Lamps and pictures are put
 * where the mirror has them, but stay what they are; a camera whose structure stays does too.
 * @returns refused where something would be farther out than a site reaches
 * @throws  RangeError where the plan has no such thing, or the two places are one
 */
export const mirrorThings = (plan: Plan, things: readonly Movable[], a: Vec2, b: Vec2): Outcome<Plan> =>
  moved(plan, things, mirrorIn(a, b));
