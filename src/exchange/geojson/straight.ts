import type { Vec2 } from '../../base/vector.ts';
import type { Ring } from '../../model/structure.ts';

/** A corner that lies this near to the line between its neighbours is where a map joined two things, m. */
const STRAIGHT = 0.02;

/** A ring without the corners that bend it by less than 20 mm, so that a rectangle with joints in its sides is one. */
export function withoutStraightCorners(ring: Ring): Ring {
  const kept = ring.filter((corner, index) => {
    const before = ring[(index + ring.length - 1) % ring.length] ?? corner;
    const after = ring[(index + 1) % ring.length] ?? corner;
    return offLine(corner, before, after) > STRAIGHT;
  });
  return kept.length < 3 ? ring : kept;
}

/** Distance of a point from the line through two others; from the first where they are one. */
function offLine(p: Vec2, a: Vec2, b: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0) return Math.hypot(p[0] - a[0], p[1] - a[1]);
  return Math.abs(dx * (p[1] - a[1]) - dy * (p[0] - a[0])) / length;
}
