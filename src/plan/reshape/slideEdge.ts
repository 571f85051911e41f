import { sin } from '../../base/angle.ts';
import { LEAST_SIZE } from '../../base/tolerance.ts';
import type { Vec2 } from '../../base/vector.ts';
import { cornerAt } from '../../model/ring.ts';
import { crossOf, difference, dotOf, heading, meeting, moved, rightOf } from '../../model/segment.ts';
import { alike, edgeCount, isClockwise, wholeEdge, type Chain, type Reshaped } from './reshaped.ts';

/** A neighbour that turns by less than this is in line with the edge, °: it cannot be lengthened to meet it. */
const IN_LINE = 1;

/** The way in which `slideEdgeOf` counts, off the edge: outwards from a ring, to the right of the way a line was drawn. */
export const outwardOf = ({ corners, closed }: Chain, edge: number): Vec2 => {
  const right = rightOf(heading(cornerAt(corners, edge), cornerAt(corners, edge + 1)));
  return closed && isClockwise(corners) ? [0 - right[0], 0 - right[1]] : right;
};

/**
 * An edge moved parallel to itself, m outwards. Its neighbours keep their headings and grow or shrink; where one is in
 * line with it, a step comes between them, which puts in a corner. Null where an edge would shrink to nothing.
 */
export function slideEdgeOf(chain: Chain, edge: number, distance: number): Reshaped | null {
  const { corners, closed } = chain;
  if (distance === 0) return alike(chain, corners);
  const [a, b] = [cornerAt(corners, edge), cornerAt(corners, edge + 1)];
  const along = heading(a, b);
  const out = outwardOf(chain, edge);
  const [from, to] = [moved(a, out, distance), moved(b, out, distance)];
  const before = closed || edge > 0 ? heading(cornerAt(corners, edge - 1), a) : null;
  const after = closed || edge + 1 < edgeCount(chain) ? heading(b, cornerAt(corners, edge + 2)) : null;
  const isInLine = (way: Vec2): boolean => Math.abs(crossOf(way, along)) < sin(IN_LINE);
  const stepBefore = before !== null && isInLine(before);
  const stepAfter = after !== null && isInLine(after);
  const start = before && !stepBefore ? (meeting(from, along, a, before) ?? from) : from;
  const end = after && !stepAfter ? (meeting(to, along, b, after) ?? to) : to;
  const shrinks = (p: Vec2, q: Vec2, way: Vec2): boolean => dotOf(difference(q, p), way) < LEAST_SIZE;
  if (shrinks(start, end, along)) return null;
  if (before && !stepBefore && shrinks(cornerAt(corners, edge - 1), start, before)) return null;
  if (after && !stepAfter && shrinks(end, cornerAt(corners, edge + 2), after)) return null;

  const next = corners.map((corner, k): Vec2[] => {
    if (k === edge) return stepBefore ? [corner, start] : [start];
    if (k === (edge + 1) % corners.length) return stepAfter ? [end, corner] : [end];
    return [corner];
  });
  // A corner that a step leaves behind stays with its neighbour; the edge itself moves on by the corners put in before it.
  const firsts: number[] = [];
  let count = 0;
  for (const group of next) {
    firsts.push(count);
    count += group.length;
  }
  const last = (corner: number): number => (firsts[corner] ?? 0) + (next[corner]?.length ?? 1) - 1;
  return {
    corners: next.flat(),
    parts: Array.from({ length: edgeCount(chain) }, (_, k) => wholeEdge(last(k))),
    // The corner that moved is the edge's; mounts around a corner stay at the one that did not.
    numbers: corners.map((_, k) =>
      stepAfter && k === (edge + 1) % corners.length ? last(k) : (firsts[k] ?? k),
    ),
    reversed: false,
  };
}
