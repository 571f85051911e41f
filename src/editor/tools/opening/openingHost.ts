import type { Vec2 } from '../../../base/vector.ts';
import { distanceToSegment, dotOf, difference, heading, span } from '../../../model/segment.ts';
import type { Barrier, Building } from '../../../model/structure.ts';
import type { Plan } from '../../../plan/plan.ts';
import { edgesOf, shapeOf } from '../../grips/shapeOf.ts';
import type { Pointed } from '../pointed.ts';
import { groundPoint } from '../snapping/workingPoint.ts';

/** An edge of a building or of a line that is pointed at. */
export interface OpeningHost {
  readonly structure: Building | Barrier;
  /** The edge as openings count it. */
  readonly face: number;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly length: number;
  /** Where it is pointed at, m from its first end. */
  readonly along: number;
}

/** A line seen from above is met so far off it, px. */
const REACH = 14;

/** The wall or line under a pointer, by what it strikes, else by the edge on the ground near it; null where there is none. */
export function openingHost(plan: Plan, at: Pointed): OpeningHost | null {
  const { struck } = at;
  const on = struck?.structure ? plan.structures[struck.structure] : undefined;
  if (struck && on && canHave(on)) return nearestEdge([on], [struck.point[0], struck.point[1]], Infinity);
  const point = groundPoint(plan, at);
  if (!point) return null;
  const hosts = Object.values(plan.structures).filter(canHave);
  return nearestEdge(hosts, point, REACH * at.metresPerPixel);
}

const canHave = (structure: Plan['structures'][string]): structure is Building | Barrier =>
  (structure.kind === 'building' || structure.kind === 'barrier') && !structure.hidden && !structure.locked;

function nearestEdge(hosts: readonly (Building | Barrier)[], point: Vec2, reach: number): OpeningHost | null {
  let best: OpeningHost | null = null;
  let least = reach;
  for (const structure of hosts) {
    const shape = shapeOf(structure);
    for (const [face, [from, to]] of (shape ? edgesOf(shape) : []).entries()) {
      const off = distanceToSegment(point, from, to);
      const length = span(from, to);
      if (off > least || !(length > 0)) continue;
      least = off;
      const along = Math.min(length, Math.max(0, dotOf(difference(point, from), heading(from, to))));
      best = { structure, face, from, to, length, along };
    }
  }
  return best;
}
