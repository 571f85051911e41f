import { cos, sin } from '../base/angle.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';

/** WGS 84: semi-major axis (m) and flattening. Source: NIMA TR8350.2, third edition, table 3.1. */
const SEMI_MAJOR = 6_378_137;
const FLATTENING = 1 / 298.257223563;
const ECCENTRICITY2 = FLATTENING * (2 - FLATTENING);

/** A place on Earth: degrees north and east. */
export interface Place {
  readonly latitude: number;
  readonly longitude: number;
}

/**
 * Earth-centred, earth-fixed coordinates of a place on the ellipsoid, m.
 * Source: NIMA TR8350.2, section 4.3 (geodetic to rectangular), with height 0.
 */
export function ecefFromPlace({ latitude, longitude }: Place): Vec3 {
  const curvature = SEMI_MAJOR / Math.sqrt(1 - ECCENTRICITY2 * sin(latitude) ** 2);
  return [
    curvature * cos(latitude) * cos(longitude),
    curvature * cos(latitude) * sin(longitude),
    curvature * (1 - ECCENTRICITY2) * sin(latitude),
  ];
}

/**
 * The map from places to the plane that touches the ellipsoid at `origin`: x east, y north, m.
 * What lies below the plane because the Earth is round is dropped (0.08 m at 1 km, 7.9 m at 10 km): a site's ground is
 * flat. Exact otherwise; a bearing or length near the origin is true.
 */
export function siteFromPlace(origin: Place): (place: Place) => Vec2 {
  const foot = ecefFromPlace(origin);
  const [sinLat, cosLat] = [sin(origin.latitude), cos(origin.latitude)];
  const [sinLon, cosLon] = [sin(origin.longitude), cos(origin.longitude)];
  return (place) => {
    const at = ecefFromPlace(place);
    const [dx, dy, dz] = [at[0] - foot[0], at[1] - foot[1], at[2] - foot[2]];
    return [-sinLon * dx + cosLon * dy, -sinLat * cosLon * dx - sinLat * sinLon * dy + cosLat * dz];
  };
}
