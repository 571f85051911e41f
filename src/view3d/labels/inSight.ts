import { distance, scale, subtract, type Vec3 } from '../../base/vector.ts';
import { pick, type Pickable } from '../picking.ts';
import type { Sheet } from '../sheet.ts';

/** How near to a point a solid may come before it counts as standing before it, m. */
const SLACK = 0.02;

/** Whether no solid stands between the viewer and a point. */
export function inSight({ eye }: Sheet, solids: Pickable, point: Vec3, slack = SLACK): boolean {
  const far = distance(eye, point);
  return pick(solids, { from: eye, along: scale(subtract(point, eye), 1 / far) }, far - slack) === null;
}
