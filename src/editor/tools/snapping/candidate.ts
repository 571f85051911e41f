import type { Vec2, Vec3 } from '../../../base/vector.ts';
import type { SketchMark } from '../chart.ts';
import type { Pointed } from '../pointed.ts';

/** Which goes first: 1 corner, 2 crossing, 3 middle, 4 foot of a perpendicular, 5 on an edge, 6 guide, 7 equal, 8 fifteen degrees, 9 grid. */
export type SnapOrder = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** A straight way along which a candidate leaves a point free: origin + t · along, t from `least` to `most`, m. */
export interface Way {
  readonly origin: Vec2;
  readonly along: Vec2;
  readonly least: number;
  readonly most: number;
}

/** A place that attracts the pointer. */
export interface SnapCandidate {
  /** The same for the same place from move to move. */
  readonly key: string;
  readonly order: SnapOrder;
  readonly point: Vec2;
  /** From the pointer, and how far it attracts, px. */
  readonly off: number;
  readonly reach: number;
  readonly name: string;
  readonly sign: SketchMark['sign'];
  /** What must be seen for it to count; null: anything over the ground. */
  readonly seenAt: Vec3 | null;
  readonly way: Way | null;
  /** Guides from their sources, m. */
  readonly guides: readonly Vec2[];
  /** An edge that it lies on: its bearing and whose it is. */
  readonly edge: { readonly heading: number; readonly of: string } | null;
}

const REACH: Readonly<Record<SnapOrder, readonly [mouse: number, touch: number]>> = {
  1: [12, 22],
  2: [12, 22],
  3: [10, 18],
  4: [8, 14],
  5: [8, 14],
  6: [6, 10],
  7: [6, 10],
  8: [0, 0],
  9: [0, 0],
};

/** How far a candidate attracts, px. */
export const reachOf = (order: SnapOrder, by: Pointed['by']): number => REACH[order][by === 'touch' ? 1 : 0];

/** By how much of its reach the candidate that holds may be left. */
export const HOLD = 1.5;
/** How far inside its reach a candidate of a lower order must be to break another's hold, px. */
const BREAK = 3;

/** How far a place appears from the pointer, px; endless where it does not appear. */
export function pixelsOff({ screen }: Pointed, [x, y]: Vec2, z: number): number {
  const at = screen.place([x, y, z]);
  return at ? Math.hypot(at[0] - screen.spot[0], at[1] - screen.spot[1]) : Infinity;
}

/**
 * The candidate that counts: the one of the lowest order within its reach, of several the nearest. The one that counted
 * before (`held`) holds to 1.5 times its reach, unless one of a lower order is 3 px inside its own.
 */
export function chosen(
  candidates: readonly SnapCandidate[],
  held: string | null,
  seen: (point: Vec3) => boolean,
): SnapCandidate | null {
  const isSeen = ({ seenAt }: SnapCandidate): boolean => seenAt === null || seen(seenAt);
  const first = (among: readonly SnapCandidate[]): SnapCandidate | null =>
    among.toSorted((a, b) => a.order - b.order || a.off - b.off).find(isSeen) ?? null;
  const before = candidates.find(
    (candidate) => candidate.key === held && candidate.off <= HOLD * candidate.reach && isSeen(candidate),
  );
  if (!before) return first(candidates.filter(({ off, reach }) => off <= reach));
  const breaks = ({ order, off, reach }: SnapCandidate): boolean =>
    order < before.order && off <= reach - BREAK;
  return first(candidates.filter(breaks)) ?? before;
}
