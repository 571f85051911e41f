import type { Vec2 } from '../base/vector.ts';
import { crossOf, dotOf } from './segment.ts';

/** The line of an edge that moves inwards at speed 1: where it is at first, its direction and its inward normal. */
export interface MovingLine {
  readonly at: Vec2;
  readonly along: Vec2;
  readonly inward: Vec2;
}

/** A corner of the front: where edges `before` and `after` meet. It set out from `node` at time `since`. */
export interface FrontCorner {
  readonly before: number;
  readonly after: number;
  readonly node: number;
  readonly since: number;
  readonly x: number;
  readonly y: number;
  readonly vx: number;
  readonly vy: number;
}

/** The closed lines that the edges have become at a time: corner k and the next bound a stretch of edge `after` of k. */
export type Contours = readonly (readonly FrontCorner[])[];

/** What comes about together at a time: stretches that vanish, and corners that run into other stretches. */
export interface Happening {
  readonly time: number;
  readonly vanished: readonly FrontCorner[];
  readonly hits: readonly { readonly corner: FrontCorner; readonly stretch: FrontCorner }[];
}

/** Times nearer than this are one, m at speed 1. */
const SAME_TIME = 1e-9;
/** How far past the end of a stretch a corner still hits it, m. */
const REACH = 1e-6;

/** A corner of the front may set out from no farther than this from where its lines meet, m. */
const ASTRAY = 1e-3;

/**
 * A corner between two lines that sets out from a place; null when the lines run against one another, or meet elsewhere at
 * that time: places that are taken for one lie a little beside lines that are almost parallel, which meet far away.
 */
export function cornerBetween(
  lines: readonly MovingLine[],
  before: number,
  after: number,
  from: { readonly node: number; readonly since: number; readonly at: Vec2 },
): FrontCorner | null {
  const [one, two] = [lines[before], lines[after]];
  if (!one || !two) return null;
  // The sum of the normals points along the bisector; its length says how fast the corner runs.
  const sx = one.inward[0] + two.inward[0];
  const sy = one.inward[1] + two.inward[1];
  const square = sx * sx + sy * sy;
  if (!(square > 1e-18)) return null;
  const speed = 2 / square;
  const { node, since, at } = from;
  const [off1, off2] = [one, two].map(
    (line) => (at[0] - line.at[0]) * line.inward[0] + (at[1] - line.at[1]) * line.inward[1] - since,
  );
  // What the two lines agree upon is off along the bisector, by as much more as the corner is fast.
  if (Math.abs((off1 ?? 0) + (off2 ?? 0)) > ASTRAY * Math.sqrt(square)) return null;
  return { before, after, node, since, x: at[0], y: at[1], vx: sx * speed, vy: sy * speed };
}

export const placeAt = (corner: FrontCorner, time: number): Vec2 => [
  corner.x + corner.vx * (time - corner.since),
  corner.y + corner.vy * (time - corner.since),
];

interface Stretch {
  readonly first: FrontCorner;
  readonly last: FrontCorner;
  readonly line: MovingLine;
}

function stretchesOf(contours: Contours, lines: readonly MovingLine[]): Stretch[] {
  return contours.flatMap((contour) =>
    contour.flatMap((first, k) => {
      const last = contour[(k + 1) % contour.length];
      const line = lines[first.after];
      return last && line ? [{ first, last, line }] : [];
    }),
  );
}

/** When the next thing happens to the front, and all that happens then; null when nothing ever does. */
export function nextHappening(
  contours: Contours,
  lines: readonly MovingLine[],
  now: number,
): Happening | null {
  const stretches = stretchesOf(contours, lines);
  const vanish = stretches.map((stretch) => vanishTime(stretch, now));
  let time = Infinity;
  for (const at of vanish) if (at < time) time = at;
  const hits: { corner: FrontCorner; stretch: FrontCorner; at: number }[] = [];
  for (const { last: corner, line: before } of stretches) {
    const after = lines[corner.after];
    if (!after || crossOf(before.along, after.along) >= 0) continue;
    for (const stretch of stretches) {
      // What set out from one place was on the stretch's line there, and does not come back to it.
      if (stretch.first.node === corner.node || stretch.last.node === corner.node) continue;
      const at = hitTime(corner, stretch, now, time);
      if (at === null) continue;
      if (at < time) time = at;
      hits.push({ corner, stretch: stretch.first, at });
    }
  }
  if (time === Infinity) return null;
  return {
    time,
    vanished: stretches.flatMap(({ first, last }, k) =>
      (vanish[k] ?? Infinity) <= time + Math.min(together(first), together(last)) ? [first] : [],
    ),
    hits: hits.filter(({ corner, at }) => at <= time + together(corner)),
  };
}

/** How much later things still happen at once: in it not even a fast corner, between lines almost parallel, gets on. */
const together = ({ vx, vy }: FrontCorner): number => SAME_TIME / Math.max(1, Math.hypot(vx, vy));

/** When a stretch has no length left; infinite for one that grows. */
function vanishTime({ first, last, line }: Stretch, now: number): number {
  const rate = (last.vx - first.vx) * line.along[0] + (last.vy - first.vy) * line.along[1];
  if (!(rate < -1e-15)) return Infinity;
  const [x0, y0] = placeAt(first, now);
  const [x1, y1] = placeAt(last, now);
  const length = (x1 - x0) * line.along[0] + (y1 - y0) * line.along[1];
  return now + Math.max(0, length / -rate);
}

/** When a corner runs into a stretch that comes towards it; null when it never does, or later than `latest`. */
function hitTime(corner: FrontCorner, stretch: Stretch, now: number, latest: number): number | null {
  const { first, last, line } = stretch;
  const { inward, along, at } = line;
  const rate = corner.vx * inward[0] + corner.vy * inward[1] - 1;
  if (!(rate < -1e-12)) return null;
  const place = placeAt(corner, now);
  const ahead = (place[0] - at[0]) * inward[0] + (place[1] - at[1]) * inward[1] - now;
  if (ahead < -REACH) return null;
  const time = now + Math.max(0, ahead / -rate);
  if (time > latest + SAME_TIME) return null;
  const there = dotOf(placeAt(corner, time), along);
  const from = dotOf(placeAt(first, time), along);
  const to = dotOf(placeAt(last, time), along);
  return there >= from - REACH && there <= to + REACH ? time : null;
}
