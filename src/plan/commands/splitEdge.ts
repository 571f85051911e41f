import { accept, refuse, type Outcome } from '../../base/fault.ts';
import { LEAST_SIZE } from '../../base/tolerance.ts';
import { cornerAt } from '../../model/ring.ts';
import { span } from '../../model/segment.ts';
import type { Plan } from '../plan.ts';
import { splitEdgeOf } from '../reshape/splitEdge.ts';
import { checkNumber, repeatedFault, reshapeThing } from './reshapeThing.ts';

/**
 * Puts a corner into an edge. It gets the number after the edge's; later corners and edges count on by one.
 * @param id    of a structure, a patch, or `boundary`
 * @param share how far along the edge, 0 to 1
 * @returns     refused within a centimetre of a corner, and where an opening or a point on the wall stands there
 * @throws      RangeError on an unknown id or edge
 */
export const splitEdge = (plan: Plan, id: string, edge: number, share: number): Outcome<Plan> =>
  reshapeThing(plan, id, (shape) => {
    checkNumber(shape, 'edge', edge);
    const twice = repeatedFault(shape);
    if (twice) return twice;
    const length = span(cornerAt(shape.corners, edge), cornerAt(shape.corners, edge + 1));
    // Written so that what is no number is refused too.
    if (!(share * length >= LEAST_SIZE && (1 - share) * length >= LEAST_SIZE))
      return refuse({ code: 'edit.splitEnd', path: [], allowed: `${LEAST_SIZE} m`, subject: shape.name });
    return accept(splitEdgeOf(shape, edge, share));
  });
