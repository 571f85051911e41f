import { cos } from '../base/angle.ts';
import { cornerAt } from './ring.ts';
import { dotOf, heading, span } from './segment.ts';
import type { Ring } from './structure.ts';

/** How far a corner may be from square, °. */
const SQUARE_WITHIN = 1;

/** Whether an outline is four corners, each square within a degree. */
export function isRectangle(outline: Ring): boolean {
  if (outline.length !== 4) return false;
  return outline.every((corner, k) => {
    const before = heading(cornerAt(outline, k - 1), corner);
    const after = heading(corner, cornerAt(outline, k + 1));
    return Math.abs(dotOf(before, after)) <= cos(90 - SQUARE_WITHIN);
  });
}

/** Mean length of edge `k` and the one across. */
export const meanLength = (outline: Ring, k: number): number =>
  (span(cornerAt(outline, k), cornerAt(outline, k + 1)) +
    span(cornerAt(outline, k + 2), cornerAt(outline, k + 3))) /
  2;

/** The longer pair of edges: 0 (with 2) or 1 (with 3). */
export const longer = (outline: Ring): number => (meanLength(outline, 1) > meanLength(outline, 0) ? 1 : 0);
