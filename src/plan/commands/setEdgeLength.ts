import { accept, refuse, type Outcome } from '../../base/fault.ts';
import { LEAST_SIZE } from '../../base/tolerance.ts';
import type { Got } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { lengthenEdgeOf } from '../reshape/lengthenEdge.ts';
import { checkNumber, repeatedFault, reshapeThing } from './reshapeThing.ts';

/**
 * Makes an edge so long, m. Where the corner that moves is square the edge beyond it slides along, parallel; else that
 * corner moves alone.
 * @param id       of a structure, a patch, or `boundary`
 * @param movesEnd whether the edge's last corner moves, or its first
 * @returns        refused where an edge would shrink to nothing, the outline cross itself, or something no longer fit
 * @throws         RangeError on an unknown id or edge
 */
export const setEdgeLength = (
  plan: Plan,
  id: string,
  edge: number,
  length: number,
  movesEnd = true,
  how?: Got,
): Outcome<Plan> =>
  reshapeThing(
    plan,
    id,
    (shape) => {
      checkNumber(shape, 'edge', edge);
      const twice = repeatedFault(shape);
      if (twice) return twice;
      const longer = length >= LEAST_SIZE ? lengthenEdgeOf(shape, edge, length, movesEnd) : null;
      return longer ? accept(longer) : refuse({ code: 'edit.edgeGone', path: [], subject: shape.name });
    },
    how,
  );
