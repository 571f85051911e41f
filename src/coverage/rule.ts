import { tan } from '../base/angle.ts';
import type { Band } from './band.ts';
import type { FaceCap, Target } from './target.ts';

/**
 * The highest band that a face may count for past each limit from above: past identify's it keeps the finest band below
 * 250 px/m, past recognise's the finest below 125 px/m. Common practice, no source; limits are settings of the plan.
 */
export function faceCapsOf(
  target: Target,
  bands: readonly Band[],
  limits: { readonly identify: { readonly above: number }; readonly recognise: { readonly above: number } },
): readonly FaceCap[] {
  if (target.kind !== 'face') return [];
  const below = (density: number) => bands.filter((band) => band.density < density).length;
  return [
    { above: limits.identify.above, band: below(250) },
    { above: limits.recognise.above, band: below(125) },
  ];
}

/** Judges a seen target: its band from density, range and the angle from above. */
export class BandRule {
  /** px/m at which each band begins, ascending. */
  readonly densities: Float64Array;
  /** Tangent of each limit from above, and the highest band (index + 1) kept past it. */
  readonly slopes: Float64Array;
  readonly kept: Uint8Array;
  readonly range2: number;

  constructor(bands: readonly Band[], caps: readonly FaceCap[], range: number) {
    this.densities = Float64Array.from(bands, ({ density }) => density);
    this.slopes = Float64Array.from(caps, ({ above }) => tan(above));
    this.kept = Uint8Array.from(caps, ({ band }) => band);
    this.range2 = range * range;
  }

  /**
   * Index + 1 of the band of a seen target; 0 where it has too few pixels or lies past the range.
   * @param over, rise how far the lens stands from the target over ground, and above it, m
   */
  band(density: number, over: number, rise: number): number {
    if (over * over + rise * rise > this.range2) return 0;
    const { densities, slopes, kept } = this;
    let band = 0;
    while (band < densities.length && density >= (densities[band] ?? 0)) band += 1;
    for (let limit = 0; limit < slopes.length; limit += 1) {
      const cap = kept[limit] ?? 0;
      if (band > cap && rise > over * (slopes[limit] ?? 0)) band = cap;
    }
    return band;
  }
}
