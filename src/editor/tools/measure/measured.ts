import { degreesFromRad } from '../../../base/angle.ts';
import { cross, distance, dot, length, subtract, type Vec3 } from '../../../base/vector.ts';

/** What lies between two points: m and °, rise and slope positive where the second is higher. */
export interface Leg {
  readonly length: number;
  /** Its length over ground. */
  readonly ground: number;
  readonly rise: number;
  readonly slope: number;
}

/** The way from one point to another. Two points in one place have a slope of 0. */
export function legOf(from: Vec3, to: Vec3): Leg {
  const [x, y, rise] = subtract(to, from);
  const ground = Math.hypot(x, y);
  return { length: Math.hypot(ground, rise), ground, rise, slope: degreesFromRad(Math.atan2(rise, ground)) };
}

/** The length of a path through points, m; `closed` comes back to the first. */
export function pathLength(points: readonly Vec3[], closed: boolean): number {
  const ends = closed ? [...points.slice(1), ...points.slice(0, 1)] : points.slice(1);
  return ends.reduce((sum, end, index) => sum + distance(points[index] ?? end, end), 0);
}

/**
 * The area within a ring of points, m²: of points in one plane that of the plane, level or not; of others that of the
 * ring seen from where it looks largest. Source: half the sum of cross products of corners (Green's theorem).
 */
export function ringArea(points: readonly Vec3[]): number {
  const [origin] = points;
  if (!origin) return 0;
  const sum = points.slice(1, -1).reduce<Vec3>(
    (total, point, index) => {
      const next = points[index + 2] ?? point;
      const part = cross(subtract(point, origin), subtract(next, origin));
      return [total[0] + part[0], total[1] + part[1], total[2] + part[2]];
    },
    [0, 0, 0],
  );
  return length(sum) / 2;
}

/** The angle between two legs at the point where they meet, 0 to 180 °; null where a leg has no length. */
export function cornerAngle(before: Vec3, at: Vec3, after: Vec3): number | null {
  const [a, b] = [subtract(before, at), subtract(after, at)];
  if (!(length(a) > 0 && length(b) > 0)) return null;
  return degreesFromRad(Math.atan2(length(cross(a, b)), dot(a, b)));
}
