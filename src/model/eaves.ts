import type { Vec2 } from '../base/vector.ts';
import type { Footprint } from './footprint.ts';
import { chainEdges, firstMeet } from './meet.ts';
import { offsetRings } from './offset.ts';
import { cornerAt, signedArea } from './ring.ts';
import { difference, dotOf, heading, leftOf, meeting, moved, rightOf, span } from './segment.ts';
import { straightened, type Straightened } from './straightRun.ts';
import type { Ring } from './structure.ts';

/** A corner whose mitre would reach further than this, in overhangs, is cut square. */
const MITRE_LIMIT = 4;
/** The least length that an edge of the eaves may have, m. */
const LEAST_EDGE = 1e-3;

/** The outer edge of the soffit: where the planes of a pitched roof set out. */
export interface Eaves {
  /** Rings without corners on straight runs, the outline counter-clockwise, those around courtyards clockwise. */
  readonly rings: readonly Ring[];
  /** The footprint's rings without such corners. */
  readonly walls: readonly Straightened[];
  /** Whether corner k of ring r of `rings` is that of ring r of `walls`: no corner was cut, no gap closed. */
  readonly matched: boolean;
}

/** The eaves around a footprint. Without overhang they are the tops of its walls, bit by bit. */
export function eavesOf(footprint: Footprint, overhang: number): Eaves {
  const walls = [footprint.outline, ...footprint.holes].map(straightened);
  const rings = walls.map(({ ring }) => ring);
  if (!(overhang > 0)) return { rings, walls, matched: true };
  const spread = rings.map((ring) => mitred(ring, () => overhang));
  if (spread.every((ring, r) => isMitred(ring, rings[r] ?? [], overhang)) && areApart(spread))
    return { rings: spread, walls, matched: true };
  // The outline first, as everywhere; it is the only ring of these that has its inside on its left.
  const cut = offsetRings(rings, overhang)
    .map((ring) => straightened(ring).ring)
    .sort((a, b) => signedArea(b) - signedArea(a));
  return { rings: cut, walls, matched: false };
}

const areApart = (rings: readonly Ring[]): boolean =>
  firstMeet(rings.flatMap((ring, chain) => chainEdges(ring, chain, true))) === null;

/** A ring with each edge moved to its right by its own distance; corners that do not move stay the same bits. */
export function mitred(ring: Ring, distance: (edge: number) => number): Ring {
  return ring.map((corner, k) => {
    const before = distance((k + ring.length - 1) % ring.length);
    const after = distance(k);
    if (before === 0 && after === 0) return corner;
    const inDirection = heading(cornerAt(ring, k - 1), corner);
    const outDirection = heading(corner, cornerAt(ring, k + 1));
    const p = moved(corner, rightOf(inDirection), before);
    const q = moved(corner, rightOf(outDirection), after);
    return meeting(p, inDirection, q, outDirection) ?? corner;
  });
}

/** Whether the edges of a mitred ring run as they did and no mitre reaches out too far. */
function isMitred(ring: Ring, from: Ring, overhang: number): boolean {
  return ring.every((corner, k) => {
    const [a, b] = [cornerAt(from, k), cornerAt(from, k + 1)];
    const along = dotOf(difference(cornerAt(ring, k + 1), corner), heading(a, b));
    return along >= LEAST_EDGE && span(corner, a) <= MITRE_LIMIT * overhang;
  });
}

/** The corner of a footprint nearest to a place, as a person counts it: "corner 6", "corner 2 of hole 1". */
export function cornerNear(
  footprint: Footprint,
  place: Vec2,
): { readonly index: number; readonly words: string } {
  let best = { index: 0, words: 'corner 1', away: Infinity };
  const { outline, edges, reversed } = footprint;
  outline.forEach((corner, k) => {
    const given = edges[k] ?? k;
    // An edge that was turned round starts where the given one ends.
    const index = reversed ? (given + 1) % Math.max(1, edges.length) : given;
    const away = span(corner, place);
    if (away < best.away) best = { index, words: `corner ${index + 1}`, away };
  });
  footprint.holes.forEach((hole, h) => {
    hole.forEach((corner, k) => {
      const away = span(corner, place);
      if (away < best.away) best = { index: k, words: `corner ${k + 1} of hole ${h + 1}`, away };
    });
  });
  return best;
}

/** How far a place lies on the inner side of a line. */
export const insideBy = (place: Vec2, at: Vec2, along: Vec2): number =>
  dotOf(difference(place, at), leftOf(along));
