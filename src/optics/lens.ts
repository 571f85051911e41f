import { degreesFromRad, radFromDegrees } from '../base/angle.ts';

/*
 * The lens law: a ray at angle θ from the axis meets the sensor at ρ(θ) = f · g(θ; k) from its middle, with
 * g = tan(kθ)/k for k > 0, θ for k = 0, sin(kθ)/k for k < 0. k = 1 is rectilinear, ½ stereographic, 0 equidistant,
 * −½ equisolid-angle, −1 orthographic. Source of the five classical laws: any text on fisheye projections.
 */

/** g(θ; k) for an angle within the law's domain. */
export function lawRad(thetaRad: number, k: number): number {
  if (k > 0) return Math.tan(k * thetaRad) / k;
  return k === 0 ? thetaRad : Math.sin(k * thetaRad) / k;
}

/** dg/dθ: stretch along the radius. */
export function lawSlopeRad(thetaRad: number, k: number): number {
  if (k > 0) return 1 / Math.cos(k * thetaRad) ** 2;
  return Math.cos(k * thetaRad);
}

/** The greatest angle that has an image: min(180°, 90°/|k|). */
export function greatestAngleRad(k: number): number {
  return Math.min(Math.PI, Math.PI / 2 / Math.abs(k));
}

/** Whether a ray at this angle has an image. */
export function hasImageRad(thetaRad: number, k: number): boolean {
  const greatest = greatestAngleRad(k);
  return k >= 0.5 ? thetaRad < greatest : thetaRad <= greatest;
}

/**
 * Distance from the middle of the sensor at which a ray meets it.
 * @param focalLength mm
 * @param k           lens law, [−1, 1]
 * @param angle       from the axis, °, 0 to 180
 * @returns           mm; null where the law gives the ray no image
 */
export function radius(focalLength: number, k: number, angle: number): number | null {
  const thetaRad = radFromDegrees(angle);
  return hasImageRad(thetaRad, k) ? focalLength * lawRad(thetaRad, k) : null;
}

/**
 * The angle from the axis of the ray that meets the sensor at a radius: the exact inverse of `radius`.
 * @returns °; null beyond the law's greatest radius
 */
export function angleOfRadius(focalLength: number, k: number, radiusMm: number): number | null {
  const thetaRad = angleOfLawRad(radiusMm / focalLength, k);
  return thetaRad === null ? null : degreesFromRad(thetaRad);
}

/** θ with g(θ; k) = g; null where there is none. */
export function angleOfLawRad(g: number, k: number): number | null {
  if (k === 0) return g <= Math.PI ? g : null;
  if (k > 0) {
    const thetaRad = Math.atan(k * g) / k;
    return thetaRad < Math.PI ? thetaRad : null;
  }
  const sine = -k * g;
  if (sine > 1) return null;
  const thetaRad = Math.asin(sine) / -k;
  return thetaRad <= Math.PI ? thetaRad : null;
}

/** The horizontal or vertical angle of view of a sensor side, °; null where the law ends before the sensor's edge. */
export function angleOfView(focalLength: number, k: number, side: number): number | null {
  const half = angleOfRadius(focalLength, k, side / 2);
  return half === null ? null : 2 * half;
}

/** A sheet that states the very angle of an end law is not refused for a last digit. */
const ROUNDING = 1e-9;

export type LawFound =
  | { readonly consistent: true; readonly k: number }
  | {
      readonly consistent: false;
      /** The law that comes nearest to what the sheet says. */
      readonly k: number;
      /** mm: the nearest focal length that would satisfy the stated angle with that law. */
      readonly nearestFocalLength: number;
    };

/**
 * The law k for which a lens of this focal length gives the stated angle of view over this width.
 * @param focalLength mm
 * @param hfov        stated angle of view, °, above 0 and at most 360
 * @param width       of the sensor, mm
 * @returns           k in [−1, 1], unique since g rises strictly with k; or what would be consistent
 * @throws            RangeError on numbers that are not finite or not above 0
 */
export function solveK(focalLength: number, hfov: number, width: number): LawFound {
  for (const n of [focalLength, hfov, width])
    if (!(n > 0 && Number.isFinite(n))) throw new RangeError(`a lens needs finite sizes above 0, got ${n}`);
  const halfRad = radFromDegrees(hfov / 2);
  const wanted = width / 2 / focalLength;
  // |k|·HFOV/2 ≤ 90°, below 90° for k > 0: the law's domain bounds the search.
  const domain = Math.PI / 2 / halfRad;
  const low = Math.max(-1, -domain);
  const least = lawRad(halfRad, low);
  if (wanted < least * (1 - ROUNDING)) return inconsistent(low, least, width);
  if (domain > 1) {
    const most = lawRad(halfRad, 1);
    if (wanted > most * (1 + ROUNDING)) return inconsistent(1, most, width);
  }
  return { consistent: true, k: bisect(halfRad, wanted, low, Math.min(1, domain)) };
}

const inconsistent = (k: number, g: number, width: number): LawFound => ({
  consistent: false,
  k,
  nearestFocalLength: width / 2 / g,
});

function bisect(halfRad: number, wanted: number, from: number, to: number): number {
  let low = from;
  let high = to;
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    // Past the tangent's pole g is negative, which is "too high".
    const g = lawRad(halfRad, middle);
    if (g > wanted || g < 0) high = middle;
    else low = middle;
  }
  const residue = (k: number) => Math.abs(lawRad(halfRad, k) - wanted);
  return residue(high) < residue(low) ? high : low;
}
