import { accept, refuse, type Outcome } from '../../base/fault.ts';
import { LEAST_SIZE } from '../../base/tolerance.ts';
import { cornerAt } from '../../model/ring.ts';
import { heading, moved, span } from '../../model/segment.ts';
import type { Plan } from '../plan.ts';
import { outwardOf } from '../reshape/slideEdge.ts';
import { cornersInEdge } from '../reshape/splitEdge.ts';
import { checkNumber, repeatedFault, reshapeThing } from './reshapeThing.ts';

/** How far plain corners may be off the arc that they stand for, m. */
const OFF_ARC = 0.005;

/**
 * Bends an edge: corners on an arc through both of its ends, within 5 mm of it.
 * @param id   of a structure, a patch, or `boundary`
 * @param rise of the arc's middle over the edge, m, outwards from a ring, to the right of the way that a line was drawn; up
 *             to half its length either way
 * @returns    refused with a rise below a centimetre or past half a circle, where it crosses itself, and where an opening on
 *             the edge stands across a new corner
 * @throws     RangeError on an unknown id or edge
 */
export const bowEdge = (plan: Plan, id: string, edge: number, rise: number): Outcome<Plan> =>
  reshapeThing(plan, id, (shape) => {
    checkNumber(shape, 'edge', edge);
    const twice = repeatedFault(shape);
    if (twice) return twice;
    const [a, b] = [cornerAt(shape.corners, edge), cornerAt(shape.corners, edge + 1)];
    const half = span(a, b) / 2;
    const height = Math.abs(rise);
    if (!(height >= LEAST_SIZE && height <= half))
      return refuse({
        code: 'edit.bow',
        path: [],
        given: rise,
        allowed: `${LEAST_SIZE} to ${Math.floor(half * 100) / 100} m`,
        subject: shape.name,
      });
    const radius = (half * half + height * height) / (2 * height);
    const opening = 2 * Math.asin(Math.min(1, half / radius));
    // A chord over the angle s stands off its arc by radius · (1 − cos(s / 2)).
    const step = 2 * Math.acos(1 - OFF_ARC / radius);
    const pieces = Math.max(2, Math.ceil(opening / step));
    const [along, out] = [heading(a, b), outwardOf(shape, edge)];
    const corners = Array.from({ length: pieces - 1 }, (_, k) => {
      const angle = (opening * (k + 1)) / pieces - opening / 2;
      const forth = half + radius * Math.sin(angle);
      const off = radius * Math.cos(angle) - (radius - height);
      return { at: moved(moved(a, along, forth), out, Math.sign(rise) * off), along: forth };
    });
    return accept(cornersInEdge(shape, edge, corners));
  });
