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

export interface Meet {
  readonly first: ChainEdge;
  readonly second: ChainEdge;
  readonly how: 'crosses' | 'touches';
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
      const how = meetOf(here.edge, there.edge);
      if (how) {
        const [first, second] = inOrder(here.edge, there.edge);
        return { first, second, how };
      }
    }
  }
  return null;
}

function inOrder(a: ChainEdge, b: ChainEdge): [ChainEdge, ChainEdge] {
  return a.chain < b.chain || (a.chain === b.chain && a.index <= b.index) ? [a, b] : [b, a];
}

function follows(a: ChainEdge, b: ChainEdge): boolean {
  if (a.chain !== b.chain) return false;
  return b.index === a.index + 1 || (a.closed && a.index === a.last && b.index === 0);
}

function meetOf(a: ChainEdge, b: ChainEdge): Meet['how'] | null {
  const next = follows(a, b);
  if (next || follows(b, a)) {
    const [first, second] = next ? [a, b] : [b, a];
    const folds =
      distanceToSegment(second.to, first.from, first.to) < SAME_POINT ||
      distanceToSegment(first.from, second.from, second.to) < SAME_POINT;
    return folds ? 'touches' : null;
  }
  const crosses =
    orientation(a.from, a.to, b.from) * orientation(a.from, a.to, b.to) < 0 &&
    orientation(b.from, b.to, a.from) * orientation(b.from, b.to, a.to) < 0;
  if (crosses) return 'crosses';
  const touches =
    distanceToSegment(a.from, b.from, b.to) < SAME_POINT ||
    distanceToSegment(a.to, b.from, b.to) < SAME_POINT ||
    distanceToSegment(b.from, a.from, a.to) < SAME_POINT ||
    distanceToSegment(b.to, a.from, a.to) < SAME_POINT;
  return touches ? 'touches' : null;
}
