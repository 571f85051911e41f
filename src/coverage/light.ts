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

/** Where a camera's own infrared reaches, as smooth functions that must all be ≥ 0: its range, the cone of its beam. */
export function infraredParts(camera: Camera, { range, beam }: Infrared): readonly Lit[] {
  const { forward } = axesOf(camera);
  const least = cos(Math.min(180, beam / 2));
  const within: Lit = (dx, dy, dz) => 1 - (dx * dx + dy * dy + dz * dz) / (range * range);
  const inBeam: Lit = (dx, dy, dz) => {
    const far = Math.sqrt(dx * dx + dy * dy + dz * dz);
    return far === 0 ? 1 : (forward[0] * dx + forward[1] * dy + forward[2] * dz) / far - least;
  };
  return beam >= 360 ? [within] : [within, inBeam];
}

/** The same as one function. */
export function infraredLit(camera: Camera, infrared: Infrared): Lit {
  const parts = infraredParts(camera, infrared);
  return (dx, dy, dz) => Math.min(...parts.map((part) => part(dx, dy, dz)));
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
 * Where some lamps light a surface enough, as smooth functions of which one must be ≥ 0: the range of each that is judged by
 * range, and the light of those that are measured, together.
 * @param from the lens that targets are given from
 */
export function lampParts(
  lamps: readonly Lamp[],
  leastLux: number,
  normal: Vec3,
  from: Vec3,
): readonly Lit[] {
  const parts: Lit[] = [];
  const measured: { readonly away: Vec3; readonly light: Parameters<typeof luxOn>[0] }[] = [];
  for (const { eye, light } of lamps) {
    const away = subtract(from, eye);
    if (light.kind === 'photometric') measured.push({ away, light });
    else
      parts.push((dx, dy, dz) => {
        const [x, y, z] = [dx + away[0], dy + away[1], dz + away[2]];
        return 1 - (x * x + y * y + z * z) / (light.range * light.range);
      });
  }
  if (measured.length > 0)
    parts.push((dx, dy, dz) => {
      let lux = 0;
      for (const { away, light } of measured)
        lux += luxOn(light, normal, dx + away[0], dy + away[1], dz + away[2]);
      return lux / leastLux - 1;
    });
  return parts;
}

/** Whether some lamps light a target enough. */
export const isLitBy = (parts: readonly Lit[], dx: number, dy: number, dz: number): boolean =>
  parts.some((part) => part(dx, dy, dz) >= 0);
