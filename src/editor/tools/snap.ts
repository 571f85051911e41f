import type { LengthUnit } from '../../base/length.ts';

const STEPS = [0.01, 0.05, 0.1, 0.5, 1, 5] as const;
/** ½, 1, 3, 6 inches, 1 and 5 feet, m. */
const FEET_STEPS = [0.0127, 0.0254, 0.0762, 0.1524, 0.3048, 1.524] as const;
/** The grid is the smallest that is so many pixels wide. */
const LEAST_PIXELS = 8;

/** The grid step for a view, m. */
export function gridStep(metresPerPixel: number, unit: LengthUnit = 'metres'): number {
  const steps = unit === 'feet' ? FEET_STEPS : STEPS;
  return steps.find((step) => step >= LEAST_PIXELS * metresPerPixel) ?? steps[steps.length - 1] ?? 5;
}

/** A value that attracts, with how many pixels it reaches. */
export interface Candidate {
  readonly value: number;
  readonly pixels: number;
  readonly name: string;
}

export interface Snapped {
  readonly value: number;
  /** What it snapped to; null for the grid or nothing. */
  readonly name: string | null;
}

/** The nearest candidate within its reach, else the nearest grid step; 1 mm where snapping is off. */
export function snap(
  value: number,
  candidates: readonly Candidate[],
  metresPerPixel: number,
  free: boolean,
): Snapped {
  if (free) return { value: Math.round(value * 1000) / 1000, name: null };
  let best: Candidate | null = null;
  for (const candidate of candidates) {
    const off = Math.abs(candidate.value - value);
    if (off <= candidate.pixels * metresPerPixel && (!best || off < Math.abs(best.value - value)))
      best = candidate;
  }
  if (best) return { value: best.value, name: best.name };
  const step = gridStep(metresPerPixel);
  return { value: Math.round(Math.round(value / step) * step * 1000) / 1000, name: null };
}
