import { bearing, turn } from '../../../base/angle.ts';
import { fixed } from '../../../base/length.ts';
import { distance, type Vec3 } from '../../../base/vector.ts';
import { aimAt } from '../../../optics/projection.ts';
import type { LengthUnit } from '../../../base/length.ts';
import { lengthWords } from '../mount/mountWords.ts';
import type { Pointed } from '../pointed.ts';

/** The tilt of a new camera that is pointed at nothing yet, °. */
export const FIRST_TILT = 20;

/**
 * The spot that a pointer means for the aim: on the target surface, unless a solid stands before it.
 * @param level z of the target surface
 */
export function spotMeant({ ray, struck }: Pointed, level: number): Vec3 | null {
  const t = (level - ray.from[2]) / ray.along[2];
  const onPlane: Vec3 | null =
    t > 0 && Number.isFinite(t)
      ? [ray.from[0] + t * ray.along[0], ray.from[1] + t * ray.along[1], level]
      : null;
  if (!struck || struck.structure === null) return onPlane ?? struck?.point ?? null;
  if (!onPlane) return struck.point;
  return distance(ray.from, struck.point) < distance(ray.from, onPlane) ? struck.point : onPlane;
}

const tenth = (degrees: number): number => Math.round(degrees * 10) / 10;

/** Pan and tilt from a lens to a spot, to a tenth of a degree; `keepTilt` leaves the tilt as it was. */
export function aimed(
  eye: Vec3,
  spot: Vec3,
  before: { readonly pan: number; readonly tilt: number },
  keepTilt: boolean,
): { pan: number; tilt: number } {
  const { pan, tilt } = aimAt(eye, spot, before.pan);
  return { pan: tenth(bearing(pan)) % 360, tilt: keepTilt ? before.tilt : tenth(tilt) };
}

/** "pan 214.0 · 34.0 right of straight out · tilt 18.5 · 7.30 away". */
export function aimWords(
  aim: { readonly pan: number; readonly tilt: number },
  outward: Vec3 | null,
  away: number | null,
  unit: LengthUnit,
): string {
  const parts = [`pan ${fixed(aim.pan, 1)}°`];
  if (outward && Math.hypot(outward[0], outward[1]) > 1e-6) {
    const off = turn((Math.atan2(outward[0], outward[1]) * 180) / Math.PI, aim.pan);
    parts.push(
      Math.abs(off) < 0.05
        ? 'straight out'
        : `${fixed(Math.abs(off), 1)}° ${off > 0 ? 'right' : 'left'} of straight out`,
    );
  }
  parts.push(`tilt ${fixed(aim.tilt, 1)}°`);
  if (away !== null) parts.push(`${lengthWords(away, unit)} away`);
  return parts.join(' · ');
}
