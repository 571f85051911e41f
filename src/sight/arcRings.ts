import type { Vec2 } from '../base/vector.ts';
import type { Window } from './sight.ts';

/** Numbers an edge keeps of its arc: the area between the whole arc and its chord, m², and the shares of it that it spans. */
export const ARC = 3;

/**
 * Rings with the region on their left whose edges may be bits of arcs. Corners are a, b in m; edge i runs from corner i to
 * the next of its ring.
 */
export interface ArcRings {
  readonly corners: Float64Array;
  /** Where each ring begins, in corners, and the end. */
  readonly starts: Int32Array;
  /** ARC numbers an edge; the area is positive where the region bulges over the chord. Null where all edges are straight. */
  readonly arcs: Float64Array | null;
}

export const NO_RINGS: ArcRings = {
  corners: new Float64Array(0),
  starts: new Int32Array(1),
  arcs: null,
};

/** The share of an arc's bulge up to a share of its chord: the arc is a parabola over it. */
export const bulgeUpTo = (share: number): number => share * share * (3 - 2 * share);

/** Rings of straight edges, outer ones counter-clockwise. */
export function straightRings(rings: readonly Float64Array[]): ArcRings {
  const kept = rings.filter((ring) => ring.length >= 6);
  const corners = new Float64Array(kept.reduce((sum, ring) => sum + ring.length, 0));
  const starts = new Int32Array(kept.length + 1);
  kept.forEach((ring, at) => {
    const start = starts[at] ?? 0;
    corners.set(ring, start * 2);
    starts[at + 1] = start + ring.length / 2;
  });
  return { corners, starts, arcs: null };
}

/** A simple polygon in either sense, as a ring with its inside on the left. */
export function polygonRings(ring: Window): ArcRings {
  const flat = Float64Array.from(ring.flat());
  const rings = straightRings([flat]);
  return areaWithin(rings) >= 0 ? rings : straightRings([Float64Array.from(ring.toReversed().flat())]);
}

/** The area that rings enclose, m². */
export function areaWithin({ corners, starts, arcs }: ArcRings): number {
  let [twice, bulges] = [0, 0];
  const [a, b] = [corners[0] ?? 0, corners[1] ?? 0];
  for (let ring = 0; ring + 1 < starts.length; ring += 1) {
    const [first, end] = [starts[ring] ?? 0, starts[ring + 1] ?? 0];
    for (let at = first; at < end; at += 1) {
      const next = at + 1 < end ? at + 1 : first;
      twice +=
        ((corners[at * 2] ?? 0) - a) * ((corners[next * 2 + 1] ?? 0) - b) -
        ((corners[next * 2] ?? 0) - a) * ((corners[at * 2 + 1] ?? 0) - b);
      if (arcs !== null)
        bulges +=
          (arcs[at * ARC] ?? 0) * (bulgeUpTo(arcs[at * ARC + 2] ?? 0) - bulgeUpTo(arcs[at * ARC + 1] ?? 0));
    }
  }
  return twice / 2 + bulges;
}

/** The same rings, moved. */
export const movedRings = ({ corners, starts, arcs }: ArcRings, [a, b]: Vec2): ArcRings => ({
  corners: corners.map((n, at) => n + (at % 2 === 0 ? a : b)),
  starts,
  arcs,
});
