import { sin } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import { cornerAt } from '../../model/ring.ts';
import { dotOf, heading, moved, span } from '../../model/segment.ts';
import { alike, edgeCount, type Chain, type Reshaped } from './reshaped.ts';
import { outwardOf, slideEdgeOf } from './slideEdge.ts';

/** How far from square a corner may be for the next edge to slide along, °. */
const SQUARE_WITHIN = 1;

/**
 * An edge made so long, m, by moving its last corner (or its first). Where that corner is square the edge beyond it slides
 * along, parallel; else the corner moves alone. Null where an edge would shrink to nothing.
 */
export function lengthenEdgeOf(
  chain: Chain,
  edge: number,
  length: number,
  movesEnd: boolean,
): Reshaped | null {
  const { corners, closed } = chain;
  const size = corners.length;
  const [a, b] = [cornerAt(corners, edge), cornerAt(corners, edge + 1)];
  const gain = length - span(a, b);
  if (gain === 0) return alike(chain, corners);
  const way = movesEnd ? heading(a, b) : heading(b, a);
  const beyond = movesEnd ? edge + 1 : edge - 1;
  if (closed || (beyond >= 0 && beyond < edgeCount(chain))) {
    const next = (beyond + size) % size;
    const turn = dotOf(way, heading(cornerAt(corners, next), cornerAt(corners, next + 1)));
    if (Math.abs(turn) <= sin(SQUARE_WITHIN))
      return slideEdgeOf(chain, next, gain * dotOf(way, outwardOf(chain, next)));
  }
  const corner = movesEnd ? (edge + 1) % size : edge;
  return alike(
    chain,
    corners.map((at, k): Vec2 => (k === corner ? moved(at, way, gain) : at)),
  );
}
