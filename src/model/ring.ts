import { orientation } from '../base/orientation.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Ring } from './structure.ts';

/** Area of a ring, m²; negative when it runs clockwise. Measured from its first corner, so that far sites stay exact. */
export function signedArea(ring: Ring): number {
  const origin = ring[0];
  if (!origin) return 0;
  let twice = 0;
  let last = ring[ring.length - 1] ?? origin;
  for (const corner of ring) {
    twice +=
      (last[0] - origin[0]) * (corner[1] - origin[1]) - (corner[0] - origin[0]) * (last[1] - origin[1]);
    last = corner;
  }
  return twice / 2;
}

/** Whether a point lies within a ring; either answer on the ring itself. Exact elsewhere. */
export function inRing(point: Vec2, ring: Ring): boolean {
  let inside = false;
  let last = ring[ring.length - 1];
  for (const corner of ring) {
    if (last && last[1] > point[1] !== corner[1] > point[1]) {
      const [low, high] = last[1] < corner[1] ? [last, corner] : [corner, last];
      if (orientation(low, high, point) > 0) inside = !inside;
    }
    last = corner;
  }
  return inside;
}

/** Corner `index` of a ring, counted round and round. @throws RangeError for an empty ring */
export function cornerAt(ring: readonly Vec2[], index: number): Vec2 {
  const corner = ring[((index % ring.length) + ring.length) % ring.length];
  if (!corner) throw new RangeError('an empty ring has no corners');
  return corner;
}
