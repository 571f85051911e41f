import { accept, refuse, type Outcome } from '../../base/fault.ts';
import type { Got } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { slideEdgeOf } from '../reshape/slideEdge.ts';
import { checkNumber, repeatedFault, reshapeThing } from './reshapeThing.ts';

/**
 * Moves an edge parallel to itself: pulls a wall's face. Its neighbours grow or shrink along their own lines; between it
 * and a neighbour that is in line with it comes a step, with a corner more.
 * @param id       of a structure, a patch, or `boundary`
 * @param distance m, outwards from a ring; to the right of the way that a line was drawn
 * @returns        refused where an edge would shrink to nothing, the outline cross itself, or something no longer fit
 * @throws         RangeError on an unknown id or edge
 */
export const slideEdge = (plan: Plan, id: string, edge: number, distance: number, how?: Got): Outcome<Plan> =>
  reshapeThing(
    plan,
    id,
    (shape) => {
      checkNumber(shape, 'edge', edge);
      const twice = repeatedFault(shape);
      if (twice) return twice;
      const slid = slideEdgeOf(shape, edge, distance);
      return slid ? accept(slid) : refuse({ code: 'edit.edgeGone', path: [], subject: shape.name });
    },
    how,
  );
