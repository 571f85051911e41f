import { SAME_POINT } from '../../base/tolerance.ts';
import type { Vec2 } from '../../base/vector.ts';
import { cornerAt } from '../../model/ring.ts';
import { span } from '../../model/segment.ts';
import { edgeCount, wholeEdge, type Chain, type Reshaped } from './reshaped.ts';

/** Other corners in place of those there were: an edge is found again where both of its corners stand as they did. */
export function foundEdges(chain: Chain, corners: readonly Vec2[]): Reshaped {
  const next: Chain = { corners, closed: chain.closed };
  const isAt = (a: Vec2, b: Vec2): boolean => span(a, b) < SAME_POINT;
  const edges = Array.from({ length: edgeCount(next) }, (_, edge) => edge);
  return {
    corners,
    parts: Array.from({ length: edgeCount(chain) }, (_, k) => {
      const [a, b] = [cornerAt(chain.corners, k), cornerAt(chain.corners, k + 1)];
      const edge = edges.find(
        (other) => isAt(a, cornerAt(corners, other)) && isAt(b, cornerAt(corners, other + 1)),
      );
      return edge === undefined ? [] : wholeEdge(edge);
    }),
    numbers: chain.corners.map((corner) => {
      const found = corners.findIndex((other) => isAt(corner, other));
      return found < 0 ? null : found;
    }),
    reversed: false,
  };
}
