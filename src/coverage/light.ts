import { cos } from '../base/angle.ts';
import { subtract, type Vec3 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import type { Infrared, LampLight } from '../optics/light.ts';
import { candelaAt } from '../optics/photometry.ts';
import { axesOf } from '../optics/projection.ts';
import type { Lit } from './conditions.ts';

/** A lamp where it hangs. Site frame, m. */
export interface Lamp {
  readonly id: string;
  readonly name: string;
  readonly eye: Vec3;
  readonly light: LampLight;
}

/** What lights a scene at night. */
export interface Night {
  /** By camera; one without has none of its own. */
  readonly infrared: ReadonlyMap<string, Infrared>;
  readonly lamps: readonly Lamp[];
  /** The least light on the target at which a camera serves, lx. Common practice, no source: no standard has a figure. */
  readonly leastLux: number;
}

/** Where a camera's own infrared reaches: within its range and the cone of its beam about the axis. */
export function infraredLit(camera: Camera, { range, beam }: Infrared): Lit {
  const { forward } = axesOf(camera);
  const least = cos(Math.min(180, beam / 2));
  return (dx, dy, dz) => {
    const far = Math.hypot(dx, dy, dz);
    const within = 1 - (far * far) / (range * range);
    if (beam >= 360 || far === 0) return within;
    const along = (forward[0] * dx + forward[1] * dy + forward[2] * dz) / far;
    return Math.min(within, along - least);
  };
}

/**
 * Illuminance of a lamp on a surface, lx: I(γ, C) · cos ε / d². Source: the inverse square and cosine laws (any lighting
 * text; from memory).
 * @param normal of the surface, unit; light from either side counts
 */
export function luxOn(
  light: Extract<LampLight, { kind: 'photometric' }>,
  normal: Vec3,
  dx: number,
  dy: number,
  dz: number,
): number {
  const far2 = dx * dx + dy * dy + dz * dz;
  if (far2 === 0) return 0;
  const far = Math.sqrt(far2);
  const vertical = (Math.acos(Math.max(-1, Math.min(1, -dz / far))) * 180) / Math.PI;
  const bearing = (Math.atan2(dx, dy) * 180) / Math.PI;
  const candela = candelaAt(light.photometry, vertical, bearing - light.turn);
  return (candela * Math.abs(normal[0] * dx + normal[1] * dy + normal[2] * dz)) / (far2 * far);
}

/**
 * Where some lamps light a surface enough together: within the range of one, or by the sum of those that are measured.
 * @param from the lens that targets are given from
 * @returns    null where there is no lamp
 */
export function lampsLit(lamps: readonly Lamp[], leastLux: number, normal: Vec3, from: Vec3): Lit | null {
  if (lamps.length === 0) return null;
  const placed = lamps.map(({ eye, light }) => ({ away: subtract(from, eye), light }));
  return (dx, dy, dz) => {
    let best = -Infinity;
    let lux = 0;
    for (const { away, light } of placed) {
      const [x, y, z] = [dx + away[0], dy + away[1], dz + away[2]];
      if (light.kind === 'range')
        best = Math.max(best, 1 - (x * x + y * y + z * z) / (light.range * light.range));
      else lux += luxOn(light, normal, x, y, z);
    }
    return Math.max(best, lux / leastLux - 1);
  };
}

/** Either of two lights is enough. */
export const eitherLit = (one: Lit | null, two: Lit | null): Lit | null =>
  one === null ? two : two === null ? one : (dx, dy, dz) => Math.max(one(dx, dy, dz), two(dx, dy, dz));
