import { bearing, cos, sin } from '../../../base/angle.ts';
import type { Vec2 } from '../../../base/vector.ts';
import { bearingOf } from '../../settings/compass.ts';

/** The working axes: the bearing of the one nearest to north, in (−45, 45], and what they were taken from. */
export interface Axes {
  readonly up: number;
  /** The thing whose edge gave them; null for east and north. */
  readonly of: string | null;
}

export const EAST_NORTH: Axes = { up: 0, of: null };

/** The working axes along and square to an edge of a bearing, °. */
export function axesAlong(edge: number, of: string): Axes {
  const turned = bearing(edge + 45) % 90;
  // The last digit of a drawn corner is no turn.
  const up = Math.round((turned - 45) * 1e9) / 1e9;
  return Math.abs(up) < 1e-6 ? { up: 0, of } : { up, of };
}

/** The four bearings of the working axes, °. */
export const fourOf = ({ up }: Axes): readonly number[] =>
  [0, 90, 180, 270].map((turn) => bearing(up + turn));

/** The unit vector over ground towards a bearing. */
export const ahead = (heading: number): Vec2 => [sin(heading), cos(heading)];

/** The bearing from one point to another, °. */
export const headingOf = (from: Vec2, to: Vec2): number => bearingOf(to[0] - from[0], to[1] - from[1]);

// Sums of typed lengths keep no rounding of their own: 4.2 + 4.8 is 9.
const nano = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;

/** The point so many metres from another towards a bearing. */
export function walked([x, y]: Vec2, heading: number, metres: number): Vec2 {
  const [east, north] = ahead(heading);
  return [nano(x + east * metres), nano(y + north * metres)];
}
