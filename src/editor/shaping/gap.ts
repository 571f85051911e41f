import type { Vec2 } from '../../base/vector.ts';
import { distanceToSegment } from '../../model/segment.ts';
import type { Plan } from '../../plan/plan.ts';
import { indexOf } from '../tools/snapping/planIndex.ts';
import type { Body } from './bodySnap.ts';

/** Gaps wider than this are not told, m. */
const WIDEST = 20;

/** The thing nearest to a body over ground, and how far off it is, m; null where none is within 20 m. */
export function gapOf(
  others: Plan,
  { corners, edges }: Body,
): { readonly to: string; readonly gap: number } | null {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const around = {
    left: Math.min(...xs) - WIDEST,
    right: Math.max(...xs) + WIDEST,
    bottom: Math.min(...ys) - WIDEST,
    top: Math.max(...ys) + WIDEST,
  };
  let best: { to: string; gap: number } | null = null;
  const take = (to: string, gap: number) => {
    if (gap <= WIDEST && (best === null || gap < best.gap)) best = { to, gap };
  };
  for (const other of indexOf(others).edges(around)) {
    for (const corner of corners) take(other.of, distanceToSegment(corner, other.from, other.to));
    for (const end of [other.from, other.to])
      for (const [a, b] of edges) take(other.of, distanceToSegment(end, a, b));
    if (edges.some(([a, b]) => doCross(a, b, other.from, other.to))) take(other.of, 0);
  }
  return best;
}

/** Whether two segments cross within both. */
function doCross(a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean {
  const side = (p: Vec2, q: Vec2, r: Vec2): number =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
