import { accept, type Outcome } from '../../base/fault.ts';
import type { Vec2 } from '../../base/vector.ts';
import { slideBy } from '../motion/motion.ts';
import { movedThings } from '../motion/movedThings.ts';
import type { Plan } from '../plan.ts';
import { sound } from './admitted.ts';
import { boundsOf, type Bounds } from './boundsOf.ts';
import type { Movable } from './thing.ts';

/** Which sides come into line: one of the four, or the middles from west to east (`middle`) or south to north (`centre`). */
export type Alignment = 'west' | 'east' | 'south' | 'north' | 'middle' | 'centre';

/**
 * Moves things so that their sides come into line with those of the last, which stays. What has no place of its own, as a
 * camera on a wall, stays too.
 * @returns refused where something would be farther out than a site reaches
 * @throws  RangeError where the plan has no such thing
 */
export function alignThings(plan: Plan, things: readonly Movable[], to: Alignment): Outcome<Plan> {
  const last = things.at(-1);
  const model = last && boundsOf(plan, [last]);
  if (!model) return accept(plan);
  const next = things.slice(0, -1).reduce((moved, thing) => {
    const bounds = boundsOf(plan, [thing]);
    if (!bounds) return moved;
    const by = gap(bounds, model, to);
    return by[0] === 0 && by[1] === 0 ? moved : movedThings(moved, [thing], slideBy(by));
  }, plan);
  return sound(plan, next);
}

function gap(from: Bounds, to: Bounds, side: Alignment): Vec2 {
  switch (side) {
    case 'west':
    case 'east':
      return [to[side] - from[side], 0];
    case 'south':
    case 'north':
      return [0, to[side] - from[side]];
    case 'middle':
      return [(to.west + to.east - from.west - from.east) / 2, 0];
    case 'centre':
      return [0, (to.south + to.north - from.south - from.north) / 2];
  }
}
