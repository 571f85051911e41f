import { refuse, type Fault, type Outcome, accept } from '../../base/fault.ts';
import { cos } from '../../base/angle.ts';
import type { Geographic } from '../../plan/plan.ts';
import type { Position } from './feature.ts';

/** Buildings farther apart than this are no site, m. */
const GREATEST_SITE = 50_000;

/** Metres to a degree of latitude, near enough to tell a site from a country. */
const DEGREE = 111_000;

/** The box of places as it grows. */
export class PlaceBox {
  private west = Infinity;
  private south = Infinity;
  private east = -Infinity;
  private north = -Infinity;

  /** @returns false where a position is no place on Earth; the box then stays as it was */
  add(positions: readonly Position[]): boolean {
    if (!positions.every(isOnEarth)) return false;
    for (const [longitude, latitude] of positions) {
      this.west = Math.min(this.west, longitude);
      this.east = Math.max(this.east, longitude);
      this.south = Math.min(this.south, latitude);
      this.north = Math.max(this.north, latitude);
    }
    return true;
  }

  /** The centre as the origin of a site, to a ten-millionth of a degree; a fault where the box is no site. */
  centre(): Outcome<Geographic> {
    const high = DEGREE * (this.north - this.south);
    const wide = DEGREE * (this.east - this.west) * cos((this.north + this.south) / 2);
    const size = Math.max(high, wide);
    if (size > GREATEST_SITE) return refuse(spreadFault(size));
    return accept({
      latitude: seven((this.north + this.south) / 2),
      longitude: seven((this.east + this.west) / 2),
      trueNorth: 0,
    });
  }
}

const spreadFault = (size: number): Fault => ({
  code: 'geojson.spread',
  path: [],
  given: `${Math.round(size / 1000)} km`,
  allowed: `${GREATEST_SITE / 1000} km`,
});

const isOnEarth = ([longitude, latitude]: Position): boolean =>
  Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90;

const seven = (degrees: number): number => Math.round(degrees * 1e7) / 1e7;
