import type { Vec2 } from '../../base/vector.ts';
import { signedArea } from '../../model/ring.ts';

/** The corners of an outline or of a line, from the first drawn; edge `k` runs from corner `k` to the next. */
export interface Chain {
  readonly corners: readonly Vec2[];
  readonly closed: boolean;
}

/** A stretch of an edge as it was, and the edge that it lies on now. */
export interface EdgePart {
  readonly edge: number;
  /** The stretch, from the first corner of the edge as it was, m. */
  readonly from: number;
  readonly to: number;
  /** What a distance from the old first corner gains, so that it counts from the new one, m. */
  readonly shift: number;
  /** Whether the first and the last corner of the edge as it was are still ends of this one. */
  readonly start: boolean;
  readonly end: boolean;
}

/** Corners that came of others, and where each edge and corner went. */
export interface Reshaped {
  readonly corners: readonly Vec2[];
  /** By edge as it was; none: it is gone. */
  readonly parts: readonly (readonly EdgePart[])[];
  /** By corner as it was; null: it is gone. */
  readonly numbers: readonly (number | null)[];
  /** The ring now runs the other way: what was the first corner of an edge is its last. Shifts count before that. */
  readonly reversed: boolean;
}

export const edgeCount = ({ corners, closed }: Chain): number =>
  Math.max(0, closed ? corners.length : corners.length - 1);

/** All of an edge, now edge `edge`. */
export const wholeEdge = (edge: number): readonly EdgePart[] => [
  { edge, from: -Infinity, to: Infinity, shift: 0, start: true, end: true },
];

/** The same corners elsewhere: each keeps its number. */
export const alike = (chain: Chain, corners: readonly Vec2[]): Reshaped => ({
  corners,
  parts: Array.from({ length: edgeCount(chain) }, (_, edge) => wholeEdge(edge)),
  numbers: chain.corners.map((_, corner) => corner),
  reversed: false,
});

/** A ring taken the other way round, beginning at corner `first` as it was. */
export function turnedRound(reshaped: Reshaped, first = 0): Reshaped {
  const size = reshaped.corners.length;
  const number = (corner: number): number => (((first - corner) % size) + size) % size;
  return {
    corners: reshaped.corners.map((_, k) => reshaped.corners[number(k)] ?? [0, 0]),
    parts: reshaped.parts.map((parts) => parts.map((part) => ({ ...part, edge: number(part.edge + 1) }))),
    numbers: reshaped.numbers.map((corner) => (corner === null ? null : number(corner))),
    reversed: !reshaped.reversed,
  };
}

/** Whether a ring runs clockwise. */
export const isClockwise = (corners: readonly Vec2[]): boolean => signedArea(corners) < 0;

/** What came of a ring, run the way it ran before: dragging a corner past the other side turns a triangle over. */
export const wound = (chain: Chain, reshaped: Reshaped): Reshaped =>
  chain.closed && signedArea(chain.corners) * signedArea(reshaped.corners) < 0
    ? turnedRound(reshaped)
    : reshaped;
