import { SAME_POINT } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import { cornerAt } from './ring.ts';
import { difference, dotOf, heading, span } from './segment.ts';
import type { Opening, Structure } from './structure.ts';

/**
 * The opening at a place on a face of a structure, or null: there is nothing there to fix anything to.
 * @param face   edge of the outline or line, as drawn; the right-hand sides of a barrier count on from its edges
 * @param z      height above z = 0
 */
export function openingAt(structure: Structure, face: number, place: Vec2, z: number): Opening | null {
  if (structure.kind !== 'building' && structure.kind !== 'barrier') return null;
  const corners = structure.kind === 'building' ? structure.outline : structure.line;
  const isOpenLine = structure.kind === 'barrier' && !structure.closed;
  const edge =
    structure.kind === 'barrier' ? face % Math.max(1, corners.length - (isOpenLine ? 1 : 0)) : face;
  const [a, b] = [cornerAt(corners, edge), cornerAt(corners, edge + 1)];
  if (span(a, b) < SAME_POINT) return null;
  const s = dotOf(difference(place, a), heading(a, b));
  const hit = structure.openings.find((opening) => {
    if (opening.face !== edge) return false;
    const foot = structure.base + opening.sill;
    const isBeside = s <= opening.along || s >= opening.along + opening.width;
    return !isBeside && z > foot && z < foot + opening.height;
  });
  return hit ?? null;
}
