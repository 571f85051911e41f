import type { Grid } from '../sight/grid.ts';
import { less, NO_AREA, type Area } from './area.ts';
import type { Cells, SiteCoverage } from './coverage.ts';
import { areaOf, tallyMarked } from './tally.ts';
import { tallyCounts } from './tallyCounts.ts';

/** No camera. */
const NOBODY = 255;

/**
 * The best band of each cell over several cameras, who gives it and how many cover it. On equal bands the finer density
 * wins, then the earlier camera.
 * @param index   of each camera in the scene, one an entry of `cells`
 * @param counted 1 on open ground that counts
 * @param open    the area of that ground
 */
export function siteOf(
  grid: Grid,
  cells: readonly Cells[],
  index: readonly number[],
  counted: Uint8Array,
  open: Area,
  bands: number,
): SiteCoverage {
  const total = grid.columns * grid.rows;
  const band = new Uint8Array(total);
  const best = new Uint8Array(total).fill(NOBODY);
  const count = new Uint8Array(total);
  const finest = new Float32Array(total);
  cells.forEach((one, at) => addCamera(one, index[at] ?? NOBODY, { grid, band, best, count, finest }));
  const rows = rowsOf(grid, cells);
  const byBand = tallyMarked({ grid, rows }, band, counted, bands + 1);
  const inCounts = tallyCounts({ grid, rows }, count, counted, cells.length);
  const byCount = cells.map((_, at) => areaOf(inCounts, at, grid));
  return {
    grid,
    band,
    best,
    count,
    byBand: Array.from({ length: bands }, (_, at) => areaOf(byBand, at + 1, grid)),
    byCount,
    unseen: less(open, byCount[0] ?? NO_AREA),
    open,
  };
}

/** First and last column of each row that lie in the frame of any camera; two numbers a row, first > last where none. */
function rowsOf({ rows, columns }: Grid, cells: readonly Cells[]): Int32Array {
  const spans = new Int32Array(rows * 2);
  for (let row = 0; row < rows; row += 1) {
    let [low, high] = [columns, -1];
    for (const one of cells) {
      const [first, last] = [one.rows[row * 2] ?? 0, one.rows[row * 2 + 1] ?? -1];
      if (first > last) continue;
      low = Math.min(low, first);
      high = Math.max(high, last);
    }
    spans[row * 2] = low;
    spans[row * 2 + 1] = high;
  }
  return spans;
}

interface Merged {
  readonly grid: Grid;
  readonly band: Uint8Array;
  readonly best: Uint8Array;
  readonly count: Uint8Array;
  readonly finest: Float32Array;
}

function addCamera({ rows, band: bands, density }: Cells, camera: number, into: Merged): void {
  const { grid, band, best, count, finest } = into;
  for (let row = 0; row < grid.rows; row += 1) {
    const last = row * grid.columns + (rows[row * 2 + 1] ?? -1);
    for (let cell = row * grid.columns + (rows[row * 2] ?? 0); cell <= last; cell += 1) {
      const here = bands[cell] ?? 0;
      if (here === 0) continue;
      count[cell] = (count[cell] ?? 0) + 1;
      const fine = density[cell] ?? 0;
      const now = band[cell] ?? 0;
      if (here < now || (here === now && fine <= (finest[cell] ?? 0))) continue;
      band[cell] = here;
      best[cell] = camera;
      finest[cell] = fine;
    }
  }
}
