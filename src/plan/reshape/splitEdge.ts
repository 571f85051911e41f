import type { Vec2 } from '../../base/vector.ts';
import { cornerAt } from '../../model/ring.ts';
import { span } from '../../model/segment.ts';
import { edgeCount, wholeEdge, type Chain, type EdgePart, type Reshaped } from './reshaped.ts';

/**
 * Corners put into an edge, in order from its first corner. The edge's stretches are told apart by how far along it the
 * new corners came from, so that a new corner may also stand off the edge: `along` gives that distance for each.
 */
export function cornersInEdge(
  chain: Chain,
  edge: number,
  added: readonly { readonly at: Vec2; readonly along: number }[],
): Reshaped {
  const more = added.length;
  const number = (corner: number): number => (corner <= edge ? corner : corner + more);
  const cuts = added.map(({ along }) => along);
  const stretches = [...added, null].map((_, k): EdgePart => {
    const [from, to] = [cuts[k - 1], cuts[k]];
    return {
      edge: edge + k,
      from: from ?? -Infinity,
      to: to ?? Infinity,
      shift: 0 - (from ?? 0),
      start: from === undefined,
      end: to === undefined,
    };
  });
  return {
    corners: chain.corners.flatMap((corner, k) =>
      k === edge ? [corner, ...added.map(({ at }) => at)] : [corner],
    ),
    parts: Array.from({ length: edgeCount(chain) }, (_, k) =>
      k === edge ? stretches : wholeEdge(number(k)),
    ),
    numbers: chain.corners.map((_, corner) => number(corner)),
    reversed: false,
  };
}

/** One corner put into an edge, `share` of the way along. */
export function splitEdgeOf(chain: Chain, edge: number, share: number): Reshaped {
  const [a, b] = [cornerAt(chain.corners, edge), cornerAt(chain.corners, edge + 1)];
  const at: Vec2 = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  return cornersInEdge(chain, edge, [{ at, along: share * span(a, b) }]);
}
