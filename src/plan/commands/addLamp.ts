import type { Vec2 } from '../../base/vector.ts';
import type { Lamp, Plan } from '../plan.ts';
import { freshId, takenIds } from './freshId.ts';

/** A lamp beside a door, and how far it serves, m: common practice, no source. */
const FIRST_HEIGHT = 2.4;
const FIRST_RANGE = 6;

/** A lamp for this plan that is not in it yet, with the next free name: L1, L2 … */
export function newLamp(plan: Plan, at: Vec2): Lamp {
  const names = Object.values(plan.lamps).map(({ name }) => name);
  const id = freshId(new Set([...takenIds(plan), ...names]), 'L');
  return {
    id,
    name: id,
    at,
    height: FIRST_HEIGHT,
    light: { kind: 'range', range: FIRST_RANGE },
    got: 'guessed',
  };
}

/**
 * Puts a lamp into the plan, last in order.
 * @throws RangeError where its id is taken
 */
export function addLamp(plan: Plan, lamp: Lamp): Plan {
  if (takenIds(plan).has(lamp.id)) throw new RangeError(`the id ${lamp.id} is taken`);
  return { ...plan, lamps: { ...plan.lamps, [lamp.id]: lamp }, lampOrder: [...plan.lampOrder, lamp.id] };
}
