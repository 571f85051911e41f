import { accept, type Outcome } from '../../base/fault.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Got } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { foundEdges } from '../reshape/foundEdges.ts';
import { alike } from '../reshape/reshaped.ts';
import { reshapeThing } from './reshapeThing.ts';

/**
 * Gives a thing other corners. As many as before: each corner keeps its number, and what is fixed to its edges goes along.
 * More or fewer: an edge is the same where both of its corners stand as they did.
 * @param id   of a structure, a patch, or `boundary`
 * @returns    refused where it crosses itself, or something on it would no longer fit or has lost its wall
 * @throws     RangeError on an unknown id
 */
export const setOutline = (plan: Plan, id: string, corners: readonly Vec2[], how?: Got): Outcome<Plan> =>
  reshapeThing(
    plan,
    id,
    (shape) =>
      accept(corners.length === shape.corners.length ? alike(shape, corners) : foundEdges(shape, corners)),
    how,
  );
