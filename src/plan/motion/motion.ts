import { bearing, cos, degreesFromRad, sin } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';

/** A way to move things over ground that keeps their shape. Angles °, clockwise from north. */
export interface Motion {
  point(place: Vec2): Vec2;
  bearing(degrees: number): number;
  /** Left becomes right, so that rings run the other way. */
  readonly mirrors: boolean;
  /** Bearings stay as they are. */
  readonly slides: boolean;
}

/** So far east and north, m. */
export const slideBy = ([x, y]: Vec2): Motion => ({
  point: (place) => [place[0] + x, place[1] + y],
  bearing: (degrees) => degrees,
  mirrors: false,
  slides: true,
});

/** About a place, ° clockwise seen from above; exact at quarter turns. */
export function turnAbout([x, y]: Vec2, degrees: number): Motion {
  const [c, s] = [cos(degrees), sin(degrees)];
  return {
    point: (place) => {
      const [east, north] = [place[0] - x, place[1] - y];
      return [x + east * c + north * s, y - east * s + north * c];
    },
    bearing: (other) => bearing(other + degrees),
    mirrors: false,
    slides: false,
  };
}

/**
 * In the line through two places.
 * @throws RangeError where the two are one
 */
export function mirrorIn(a: Vec2, b: Vec2): Motion {
  const [east, north] = [b[0] - a[0], b[1] - a[1]];
  const size = east * east + north * north;
  if (!(size > 0)) throw new RangeError(`a line needs two places, got ${a.join(', ')} twice`);
  const line = degreesFromRad(Math.atan2(east, north));
  return {
    point: ([x, y]) => {
      // Twice the way off the line, taken back: exact along the axes.
      const off = (2 * ((x - a[0]) * north - (y - a[1]) * east)) / size;
      return [x - off * north, y + off * east];
    },
    bearing: (other) => bearing(2 * line - other),
    mirrors: true,
    slides: false,
  };
}
