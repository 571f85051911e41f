import { cos } from '../base/angle.ts';
import type { Vec2 } from '../base/vector.ts';
import { cornerAt } from './ring.ts';
import { dotOf, heading, meeting, moved, rightOf, span } from './segment.ts';
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

/** The rectangle with each edge moved outwards by its own distance; corners that do not move stay the same bits. */
export function spread(outline: Ring, distances: readonly number[]): Ring {
  return outline.map((corner, k) => {
    const before = distances[(k + 3) % 4] ?? 0;
    const after = distances[k] ?? 0;
    if (before === 0 && after === 0) return corner;
    const inDirection = heading(cornerAt(outline, k - 1), corner);
    const outDirection = heading(corner, cornerAt(outline, k + 1));
    const p = moved(corner, rightOf(inDirection), before);
    const q = moved(corner, rightOf(outDirection), after);
    return meeting(p, inDirection, q, outDirection) ?? corner;
  });
}

/** Mean length of edge `k` and the one across. */
export const meanLength = (outline: Ring, k: number): number =>
  (span(cornerAt(outline, k), cornerAt(outline, k + 1)) +
    span(cornerAt(outline, k + 2), cornerAt(outline, k + 3))) /
  2;

export const middle = (a: Vec2, b: Vec2): Vec2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
