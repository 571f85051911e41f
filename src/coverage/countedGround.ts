import type { Vec2 } from '../base/vector.ts';
import type { Solid } from '../model/solid.ts';
import type { Plane } from '../base/plane.ts';
import { halfPlanesOf } from '../sight/halfPlanes.ts';
import type { Area } from './area.ts';
import { areaWithin, bracketed, LEVEL, type Counted } from './brackets.ts';
import { WITHIN } from './judge.ts';
import { InsideJudge, SolidsAt } from './solidsAt.ts';

/**
 * The ground that counts as brackets ask for it.
 * @param parts convex, counter-clockwise, without overlap
 * @param whole whether they are one rectangle along the axes
 */
export function countedGround(parts: readonly (readonly Vec2[])[], whole: boolean): Counted {
  const corners = parts.flat();
  const least = (axis: 0 | 1): number =>
    corners.reduce((sum, corner) => Math.min(sum, corner[axis]), Infinity);
  const most = (axis: 0 | 1): number =>
    corners.reduce((sum, corner) => Math.max(sum, corner[axis]), -Infinity);
  return {
    left: least(0),
    bottom: least(1),
    right: most(0),
    top: most(1),
    parts: whole ? null : parts.map((part) => halfPlanesOf(part)),
  };
}

/** What of a plane lies inside solids, between bounds that surely hold. */
export function insideBetween(solids: readonly Solid[], plane: Plane, counted: Counted): Area {
  const judge = new InsideJudge(new SolidsAt(solids, plane));
  const [[, inside] = []] = bracketed([judge], counted, LEVEL, [WITHIN + 1], ([labels = []], [into = []]) =>
    into.push(...labels),
  );
  return areaWithin(inside ?? { low: 0, high: 0 });
}
