import type { Grid } from '../sight/grid.ts';
import type { Cells, SiteCoverage } from './coverage.ts';
import { areaOf, NOT_COUNTED, tally } from './tally.ts';

/** No camera. */
export const NOBODY = 255;

/**
 * The best band of each cell over several cameras, who gives it and how many cover it. On equal bands the finer density
 * wins, then the earlier camera.
 * @param index  of each camera in the scene, one an entry of `cells`
 * @param mask   1 where areas are counted
 * @param inside 1 within a solid: no open ground
 */
export function siteOf(
  grid: Grid,
  cells: readonly Cells[],
  index: readonly number[],
  mask: Uint8Array,
  inside: Uint8Array,
  bands: number,
): SiteCoverage {
  const total = grid.columns * grid.rows;
  const band = new Uint8Array(total);
  const best = new Uint8Array(total).fill(NOBODY);
  const count = new Uint8Array(total);
  const finest = new Float32Array(total);
  cells.forEach((one, at) => {
    const camera = index[at] ?? NOBODY;
    for (let cell = 0; cell < total; cell += 1) {
      const here = one.band[cell] ?? 0;
      if (here === 0) continue;
      count[cell] = (count[cell] ?? 0) + 1;
      const density = one.density[cell] ?? 0;
      const now = band[cell] ?? 0;
      if (here < now || (here === now && density <= (finest[cell] ?? 0))) continue;
      band[cell] = here;
      best[cell] = camera;
      finest[cell] = density;
    }
  });
  const labels = new Int16Array(total);
  for (let cell = 0; cell < total; cell += 1)
    labels[cell] = mask[cell] !== 1 || inside[cell] === 1 ? NOT_COUNTED : (band[cell] ?? 0);
  const byBand = tally(grid, labels, bands + 1);
  for (let cell = 0; cell < total; cell += 1) if (labels[cell] !== NOT_COUNTED) labels[cell] = 0;
  const open = tally(grid, labels, 1);
  return {
    grid,
    band,
    best,
    count,
    byBand: Array.from({ length: bands }, (_, at) => areaOf(byBand, at + 1, grid)),
    unseen: areaOf(byBand, 0, grid),
    open: areaOf(open, 0, grid),
  };
}
