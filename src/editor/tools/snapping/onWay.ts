import type { Vec2 } from '../../../base/vector.ts';
import { crossOf, difference, dotOf, meeting, moved } from '../../../model/segment.ts';
import type { Way } from './candidate.ts';

/** How far along a way the point on it nearest to another lies, within its ends, m. */
export const shareOf = ({ origin, along, least, most }: Way, point: Vec2): number =>
  Math.min(most, Math.max(least, dotOf(difference(point, origin), along)));

/** The point of a way so far along. */
export const pointOf = ({ origin, along }: Way, share: number): Vec2 => moved(origin, along, share);

/** Where two ways cross within their ends; null where they do not, or run nearly alongside. */
export function crossing(a: Way, b: Way): Vec2 | null {
  // Under two degrees the crossing runs away from the pointer with every hair that it moves.
  if (Math.abs(crossOf(a.along, b.along)) < 0.035) return null;
  const at = meeting(a.origin, a.along, b.origin, b.along);
  if (!at) return null;
  const within = (way: Way): boolean => {
    const share = dotOf(difference(at, way.origin), way.along);
    return share >= way.least - 1e-9 && share <= way.most + 1e-9;
  };
  return within(a) && within(b) ? at : null;
}

/** Whether two ways are parts of one line, to half a centimetre near their origins. */
export const sameLine = (a: Way, b: Way): boolean =>
  Math.abs(crossOf(a.along, b.along)) < 1e-4 &&
  Math.abs(crossOf(difference(b.origin, a.origin), a.along)) < 0.005;
