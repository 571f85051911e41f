import { tan } from '../base/angle.ts';
import { bandReached, type Band } from './band.ts';
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
  readonly bands: readonly Band[];
  /** Tangent of each limit from above, and the band kept past it. */
  readonly slopes: readonly { readonly slope: number; readonly band: number }[];
  readonly range2: number;

  constructor(bands: readonly Band[], caps: readonly FaceCap[], range: number) {
    this.bands = bands;
    this.slopes = caps.map(({ above, band }) => ({ slope: tan(above), band }));
    this.range2 = range * range;
  }

  /**
   * Index + 1 of the band of a seen target; 0 where it has too few pixels or lies past the range.
   * @param over, rise how far the lens stands from the target over ground, and above it, m
   */
  band(density: number, over: number, rise: number): number {
    if (over * over + rise * rise > this.range2) return 0;
    let band = bandReached(this.bands, density);
    for (const cap of this.slopes) if (band > cap.band && rise > over * cap.slope) band = cap.band;
    return band;
  }
}
