import { accept, type Outcome } from '../../base/fault.ts';
import { SAME_POINT } from '../../base/tolerance.ts';
import type { Vec2 } from '../../base/vector.ts';
import { cornerAt } from '../../model/ring.ts';
import { span } from '../../model/segment.ts';
import type { Got } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { alike } from '../reshape/reshaped.ts';
import { joinedCorner } from './joinCorner.ts';
import { checkNumber, reshapeThing } from './reshapeThing.ts';

/**
 * Puts a corner elsewhere; on the place of its neighbour it is taken out.
 * @param id   of a structure, a patch, or `boundary`
 * @param how  left out (a drag), the mark of the outline stays
 * @returns    refused where the outline would cross itself or something on it would no longer fit
 * @throws     RangeError on an unknown id or corner
 */
export const setCorner = (plan: Plan, id: string, corner: number, at: Vec2, how?: Got): Outcome<Plan> =>
  reshapeThing(
    plan,
    id,
    (shape) => {
      checkNumber(shape, 'corner', corner);
      const { corners, closed } = shape;
      const neighbours = [corner - 1, corner + 1].filter((k) => closed || (k >= 0 && k < corners.length));
      if (neighbours.some((k) => span(cornerAt(corners, k), at) < SAME_POINT))
        return joinedCorner(shape, corner);
      return accept(
        alike(
          shape,
          corners.map((other, k) =>
            k === corner && (other[0] !== at[0] || other[1] !== at[1]) ? at : other,
          ),
        ),
      );
    },
    how,
  );
