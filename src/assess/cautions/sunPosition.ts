import { cos, degreesFromRad, sin } from '../../base/angle.ts';
import type { Vec3 } from '../../base/vector.ts';

/** Where the sun stands: bearing from true north and height above the horizon, °, without refraction. */
export interface SunPosition {
  readonly bearing: number;
  readonly height: number;
}

/** Julian day of 1 January 2000, noon UTC. */
const J2000 = 2_451_545;

/**
 * The sun over a place, by the low-precision formulae of the Astronomical Almanac for its ecliptic longitude and the obliquity
 * (good to 0.01° from 1950 to 2050), and Greenwich mean sidereal time.
 * Source: the Astronomical Almanac, section C, "low precision formulas for the sun", and the linear part of mean sidereal time;
 * both from memory. Judged by facts U1 in tests/outside.
 * @param julianDay in UTC
 * @param latitude  ° north
 * @param longitude ° east
 */
export function sunPosition(julianDay: number, latitude: number, longitude: number): SunPosition {
  const n = julianDay - J2000;
  const mean = 280.46 + 0.9856474 * n;
  const anomaly = 357.528 + 0.9856003 * n;
  const ecliptic = mean + 1.915 * sin(anomaly) + 0.02 * sin(2 * anomaly);
  const oblique = 23.439 - 4e-7 * n;
  const [x, y, z] = [cos(ecliptic), cos(oblique) * sin(ecliptic), sin(oblique) * sin(ecliptic)];
  const right = degreesFromRad(Math.atan2(y, x));
  const sidereal = 280.46061837 + 360.98564736629 * n + longitude;
  const hour = sidereal - right;
  const [up, over] = [z, Math.hypot(x, y)];
  // North, east and up of the place.
  const [sl, cl] = [sin(latitude), cos(latitude)];
  const north = up * cl - over * sl * cos(hour);
  const east = -over * sin(hour);
  const high = up * sl + over * cl * cos(hour);
  const bearing = degreesFromRad(Math.atan2(east, north));
  return {
    bearing: bearing < 0 ? bearing + 360 : bearing,
    height: degreesFromRad(Math.asin(Math.max(-1, Math.min(1, high)))),
  };
}

/** Towards the sun in the site frame, unit. @param trueNorth bearing of +y from true north, ° */
export function sunWay({ bearing, height }: SunPosition, trueNorth: number): Vec3 {
  const here = bearing - trueNorth;
  return [cos(height) * sin(here), cos(height) * cos(here), sin(height)];
}
