import { tan } from '../base/angle.ts';
import { add, dot, scale, subtract, unit, type Vec3 } from '../base/vector.ts';
import { eyeOf, fieldOf, viewAxes, type Orbit } from './orbit.ts';

/** A place on the window: CSS pixels right and down from its top left corner. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Ray {
  readonly from: Vec3;
  /** Unit vector. */
  readonly along: Vec3;
}

/** The way between the site and the window for one view. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly eye: Vec3;
  readonly ahead: Vec3;
  /** Where a point appears; null behind the eye. `depth` in m along the view. */
  spotFromSite(point: Vec3): (Spot & { readonly depth: number }) | null;
  rayFromSpot(spot: Spot): Ray;
  /** Metres that a CSS pixel covers at a point, square to the view. */
  metresPerPixel(point: Vec3): number;
}

export function sheetOf(orbit: Orbit, width: number, height: number): Sheet {
  const { right, up, ahead } = viewAxes(orbit);
  const eye = eyeOf(orbit);
  const gain = height / 2 / tan(fieldOf(orbit) / 2);
  return {
    width,
    height,
    eye,
    ahead,
    spotFromSite(point) {
      const d = subtract(point, eye);
      const depth = dot(d, ahead);
      if (depth <= 1e-6) return null;
      return {
        x: width / 2 + (gain * dot(d, right)) / depth,
        y: height / 2 - (gain * dot(d, up)) / depth,
        depth,
      };
    },
    rayFromSpot: ({ x, y }) => ({
      from: eye,
      along: unit(add(ahead, add(scale(right, (x - width / 2) / gain), scale(up, (height / 2 - y) / gain)))),
    }),
    metresPerPixel: (point) => Math.max(1e-6, dot(subtract(point, eye), ahead)) / gain,
  };
}

/** Where a ray meets the level plane at height z; null where it does not, ahead of its start. */
export function meetLevel({ from, along }: Ray, z: number): Vec3 | null {
  const t = (z - from[2]) / along[2];
  return Number.isFinite(t) && t > 0 ? [from[0] + t * along[0], from[1] + t * along[1], z] : null;
}
