import { orientation } from '../base/orientation.ts';
import { SAME_POINT } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import { distanceToSegment } from './segment.ts';

/** An edge of a chain of corners: `index` counts along the chain, `last` is the index of the chain's last edge. */
export interface ChainEdge {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly chain: number;
  readonly index: number;
  readonly last: number;
  readonly closed: boolean;
}

/** Two edges that cross, or a corner that touches an edge. */
export type Meet =
  | { readonly how: 'crosses'; readonly first: ChainEdge; readonly second: ChainEdge }
  | { readonly how: 'touches'; readonly corner: ChainCorner; readonly edge: ChainEdge };

export interface ChainCorner {
  readonly chain: number;
  readonly index: number;
}

/** The edges of one chain. */
export function chainEdges(corners: readonly Vec2[], chain: number, closed: boolean): ChainEdge[] {
  const count = closed ? corners.length : corners.length - 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => {
    const from = corners[index];
    const to = corners[(index + 1) % corners.length];
    if (!from || !to) throw new RangeError(`no corner ${index} in a chain of ${corners.length}`);
    return { from, to, chain, index, last: count - 1, closed };
  });
}

/**
 * The first two edges that cross, or come nearer than `SAME_POINT` without being neighbours; null when all keep apart.
 * Neighbours share a corner and may share no more: a fold back onto itself touches.
 * Cost: edges sorted by their left end, so that only those that overlap in x are compared. Crossing is decided exactly.
 */
export function firstMeet(edges: readonly ChainEdge[]): Meet | null {
  const sorted = edges
    .map((edge) => ({
      edge,
      left: Math.min(edge.from[0], edge.to[0]),
      right: Math.max(edge.from[0], edge.to[0]),
    }))
    .sort((a, b) => a.left - b.left);
  for (let i = 0; i < sorted.length; i++) {
    const here = sorted[i];
    if (!here) break;
    const low = Math.min(here.edge.from[1], here.edge.to[1]) - SAME_POINT;
    const high = Math.max(here.edge.from[1], here.edge.to[1]) + SAME_POINT;
    for (let j = i + 1; j < sorted.length; j++) {
      const there = sorted[j];
      if (!there || there.left > here.right + SAME_POINT) break;
      const { from, to } = there.edge;
      if (Math.max(from[1], to[1]) < low || Math.min(from[1], to[1]) > high) continue;
      const meet = meetOf(here.edge, there.edge);
      if (meet) return meet;
    }
  }
  return null;
}

function follows(a: ChainEdge, b: ChainEdge): boolean {
  if (a.chain !== b.chain) return false;
  return b.index === a.index + 1 || (a.closed && a.index === a.last && b.index === 0);
}

const start = (edge: ChainEdge): ChainCorner => ({ chain: edge.chain, index: edge.index });
const end = (edge: ChainEdge): ChainCorner => ({ chain: edge.chain, index: edge.index + 1 });

function meetOf(a: ChainEdge, b: ChainEdge): Meet | null {
  const [one, two] = a.chain < b.chain || (a.chain === b.chain && a.index <= b.index) ? [a, b] : [b, a];
  if (follows(one, two)) return fold(one, two);
  if (follows(two, one)) return fold(two, one);
  const crosses =
    orientation(one.from, one.to, two.from) * orientation(one.from, one.to, two.to) < 0 &&
    orientation(two.from, two.to, one.from) * orientation(two.from, two.to, one.to) < 0;
  if (crosses) return { how: 'crosses', first: one, second: two };
  return (
    touch(one.from, start(one), two) ??
    touch(one.to, end(one), two) ??
    touch(two.from, start(two), one) ??
    touch(two.to, end(two), one)
  );
}

/** An edge that runs back along the one before it. */
const fold = (before: ChainEdge, after: ChainEdge): Meet | null =>
  touch(after.to, end(after), before) ?? touch(before.from, start(before), after);

const touch = (point: Vec2, corner: ChainCorner, edge: ChainEdge): Meet | null =>
  distanceToSegment(point, edge.from, edge.to) < SAME_POINT ? { how: 'touches', corner, edge } : null;
