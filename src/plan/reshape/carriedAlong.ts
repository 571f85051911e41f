import { accept, refuse, type Outcome } from '../../base/fault.ts';
import { SAME_POINT } from '../../base/tolerance.ts';
import { cornerAt } from '../../model/ring.ts';
import { span } from '../../model/segment.ts';
import type { Reshaped } from './reshaped.ts';

/** Something on an edge: `along` its nearer side from the edge's first corner, m; a point has no width. */
interface OnEdge {
  readonly face: number;
  readonly along: number;
  readonly width?: number;
}

/**
 * Where something on an edge is on the new corners, as far from the corner that it is measured from.
 * @param mayReachOver whether it may reach past the ends of its edge, as a picture of a wall does
 */
export function carriedAlong(
  { face, along, width = 0 }: OnEdge,
  subject: string,
  { parts, corners, reversed }: Reshaped,
  mayReachOver = false,
): Outcome<{ readonly face: number; readonly along: number }> {
  const stretches = parts[face] ?? [];
  if (stretches.length === 0) return refuse({ code: 'edit.wallGone', path: [], subject });
  const [near, far] = mayReachOver ? [along + width / 2, along + width / 2] : [along, along + width];
  const part = stretches.find(({ from, to }) => near >= from - SAME_POINT && far <= to + SAME_POINT);
  if (!part) return refuse({ code: 'edit.cornerThere', path: [], subject });
  let placed = along + part.shift;
  if (placed < 0 && !mayReachOver) {
    if (placed < -SAME_POINT) return refuse({ code: 'edit.noRoom', path: [], subject });
    placed = 0;
  }
  if (!reversed) return accept({ face: part.edge, along: placed });
  const length = span(cornerAt(corners, part.edge), cornerAt(corners, part.edge + 1));
  const other = length - placed - width;
  // What reached past the end before does so still, from the same distance.
  if (other < 0 && !mayReachOver) return accept({ face: part.edge, along: other > -SAME_POINT ? 0 : placed });
  return accept({ face: part.edge, along: other });
}
