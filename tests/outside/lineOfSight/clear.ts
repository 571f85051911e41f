import type { Vec3 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { Segments } from '../../../src/sight/segment.ts';
import { treeOf } from '../../../src/sight/tree.ts';

/** Whether nothing stands between two points, asked of the rays of one scene. */
export function clearOver(solids: readonly Solid[]): (from: Vec3, to: Vec3) => boolean {
  const facets = facetsOf(solids);
  const segments = new Segments(facets, treeOf(facets));
  return (from, to) => segments.firstHit(from, to, 'solid') === null;
}

/** Where a question that is true at `low` and false at `high` turns, to `width`. */
export function turningPoint(
  holds: (at: number) => boolean,
  low: number,
  high: number,
  width = 1e-7,
): number {
  if (!holds(low) || holds(high)) throw new Error(`no turn between ${low} and ${high}`);
  let [from, to] = [low, high];
  while (to - from > width) {
    const middle = (from + to) / 2;
    if (holds(middle)) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
