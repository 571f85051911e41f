import type { Vec2 } from '../base/vector.ts';
import { orientation } from '../base/orientation.ts';
import { inRing } from './ring.ts';
import { distanceToSegment } from './segment.ts';

/** How much wall must stay behind and beside a recess, m. */
const LEAST_WALL = 0.001;

/** Whether two segments cross or come nearer than `gap`. */
function near(a: Vec2, b: Vec2, c: Vec2, d: Vec2, gap: number): boolean {
  const crosses =
    orientation(a, b, c) * orientation(a, b, d) < 0 && orientation(c, d, a) * orientation(c, d, b) < 0;
  return (
    crosses ||
    distanceToSegment(a, c, d) < gap ||
    distanceToSegment(b, c, d) < gap ||
    distanceToSegment(c, a, b) < gap ||
    distanceToSegment(d, a, b) < gap
  );
}

/** A recess over ground: its mouth's start and end on the wall, then its back's end and start. */
export type RecessPlan = readonly [Vec2, Vec2, Vec2, Vec2];

/** The jambs and the back: what must not reach anything else. */
const sidesOf = ([a, b, c, d]: RecessPlan): readonly (readonly [Vec2, Vec2])[] => [
  [b, c],
  [c, d],
  [d, a],
];

/** Whether two recesses would run into each other over ground. */
export const recessesMeet = (one: RecessPlan, other: RecessPlan): boolean =>
  sidesOf(one).some(([a, b]) => sidesOf(other).some(([c, d]) => near(a, b, c, d, LEAST_WALL)));

/**
 * Whether a recess stays within the rings of its building, which it leaves only at its mouth on edge `edge` of the
 * first ring.
 */
export function recessFits(recess: RecessPlan, rings: readonly (readonly Vec2[])[], edge: number): boolean {
  const [, , c, d] = recess;
  const [outline, ...holes] = rings;
  if (!outline || !inRing(c, outline) || !inRing(d, outline)) return false;
  // A courtyard may lie wholly within the recess, clear of its sides.
  if (holes.some(([corner]) => corner && inRing(corner, recess))) return false;
  return rings.every((ring, r) =>
    ring.every((p, k) => {
      if (r === 0 && k === edge) return true;
      const q = ring[(k + 1) % ring.length] ?? p;
      return !sidesOf(recess).some(([a, b]) => near(a, b, p, q, LEAST_WALL));
    }),
  );
}
