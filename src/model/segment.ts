import type { Vec2 } from '../base/vector.ts';

export const difference = (a: Vec2, b: Vec2): Vec2 => [a[0] - b[0], a[1] - b[1]];
/** Distance over ground. A root, since the built-in hypotenuse is many times slower and sites are far from overflow. */
export function span(a: Vec2, b: Vec2): number {
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  return Math.sqrt(x * x + y * y);
}
export const crossOf = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0];
export const dotOf = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];
export const moved = (a: Vec2, direction: Vec2, by: number): Vec2 => [
  a[0] + direction[0] * by,
  a[1] + direction[1] * by,
];

/** The unit vector from one point over ground to another. @throws RangeError when they are one */
export function heading(a: Vec2, b: Vec2): Vec2 {
  const size = span(a, b);
  if (!(size > 0)) throw new RangeError(`a direction needs two points, got ${a.join(', ')} twice`);
  return [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
}

/** A quarter turn to the right: from the direction of an edge of a counter-clockwise ring to its outside. */
export const rightOf = (direction: Vec2): Vec2 => [direction[1], 0 - direction[0]];
/** A quarter turn to the left. */
export const leftOf = (direction: Vec2): Vec2 => [0 - direction[1], direction[0]];

/** How far a point over ground is from a segment, m. */
export function distanceToSegment(point: Vec2, a: Vec2, b: Vec2): number {
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  const size = x * x + y * y;
  const share = size > 0 ? ((point[0] - a[0]) * x + (point[1] - a[1]) * y) / size : 0;
  const t = Math.min(1, Math.max(0, share));
  const dx = point[0] - a[0] - t * x;
  const dy = point[1] - a[1] - t * y;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Where two lines, each a point and a direction, meet; null when they are parallel. */
export function meeting(p: Vec2, along: Vec2, q: Vec2, other: Vec2): Vec2 | null {
  const slant = crossOf(along, other);
  if (Math.abs(slant) < 1e-12) return null;
  return moved(p, along, crossOf(difference(q, p), other) / slant);
}
