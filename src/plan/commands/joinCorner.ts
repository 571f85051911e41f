import { accept, refuse, type Outcome } from '../../base/fault.ts';
import type { Plan } from '../plan.ts';
import { joinCornerOf } from '../reshape/joinCorner.ts';
import type { Reshaped } from '../reshape/reshaped.ts';
import { checkNumber, reshapeThing, type Shape } from './reshapeThing.ts';

/**
 * Takes a corner out, so that its two edges become one. What is on either keeps its distance to the corner that stays.
 * @param id of a structure, a patch, or `boundary`
 * @returns  refused at three corners (two of an open line), and where something would no longer fit
 * @throws   RangeError on an unknown id or corner
 */
export const joinCorner = (plan: Plan, id: string, corner: number): Outcome<Plan> =>
  reshapeThing(plan, id, (shape) => joinedCorner(shape, corner));

/** The corners without one, or that these are the fewest. */
export function joinedCorner(shape: Shape, corner: number): Outcome<Reshaped> {
  checkNumber(shape, 'corner', corner);
  const least = shape.closed ? 3 : 2;
  if (shape.corners.length <= least)
    return refuse({
      code: 'edit.corners',
      path: [],
      given: shape.corners.length - 1,
      allowed: String(least),
      subject: shape.name,
    });
  return accept(joinCornerOf(shape, corner));
}
