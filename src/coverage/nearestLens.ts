/** A lens by its foot and its distance from the plane, m. */
export interface LensOver {
  readonly p: number;
  readonly q: number;
  readonly delta: number;
  /** By how much smaller than elsewhere pieces must be against their distance; 1 where left out. */
  readonly finer?: number;
}

/** Foot and distance of each lens, and how much finer squared: four numbers. */
export const lensNumbers = (lenses: readonly LensOver[]): Float64Array =>
  Float64Array.from(lenses.flatMap(({ p, q, delta, finer = 1 }) => [p, q, delta, finer * finer]));

/** Squared distance, m², from the nearest lens to the nearest of three corners, over how much finer. @param lenses as `lensNumbers` */
export function nearest2(
  lenses: Float64Array,
  pa: number,
  qa: number,
  pb: number,
  qb: number,
  pc: number,
  qc: number,
): number {
  let least = Infinity;
  for (let lens = 0; lens < lenses.length; lens += 4) {
    const [p, q, delta] = [lenses[lens] ?? 0, lenses[lens + 1] ?? 0, lenses[lens + 2] ?? 0];
    const a = (pa - p) * (pa - p) + (qa - q) * (qa - q);
    const b = (pb - p) * (pb - p) + (qb - q) * (qb - q);
    const c = (pc - p) * (pc - p) + (qc - q) * (qc - q);
    const over = a < b ? (a < c ? a : c) : b < c ? b : c;
    const far2 = (over + delta * delta) / (lenses[lens + 3] ?? 1);
    if (far2 < least) least = far2;
  }
  return least;
}
