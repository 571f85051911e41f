import type { Grid } from '../sight/grid.ts';
import type { Tally } from './tally.ts';

/**
 * Counts the cells of a mask by the least number that they reach: entry n − 1 holds those of n or more, and of these the
 * edge cells, which have a 4-neighbour of fewer or off the mask.
 * @param rows    first and last column that can have a number, two numbers a row
 * @param numbers one a cell
 * @param mask    1 where cells count
 */
export function tallyCounts(
  { grid, rows: spans }: { readonly grid: Grid; readonly rows: Int32Array },
  numbers: Uint8Array,
  mask: Uint8Array,
  most: number,
): Tally {
  const { columns, rows } = grid;
  const [cells, edges] = [new Float64Array(most), new Float64Array(most)];
  const at = (index: number): number => (mask[index] === 1 ? (numbers[index] ?? 0) : 0);
  for (let row = 0; row < rows; row += 1) {
    const start = row * columns;
    const end = start + (spans[row * 2 + 1] ?? -1);
    for (let index = start + (spans[row * 2] ?? 0); index <= end; index += 1) {
      const here = Math.min(most, at(index));
      if (here === 0) continue;
      const beside = Math.min(
        index > start ? at(index - 1) : here,
        index + 1 < start + columns ? at(index + 1) : here,
        row > 0 ? at(index - columns) : here,
        row + 1 < rows ? at(index + columns) : here,
      );
      for (let level = 0; level < here; level += 1) {
        cells[level] = (cells[level] ?? 0) + 1;
        if (beside <= level) edges[level] = (edges[level] ?? 0) + 1;
      }
    }
  }
  return { cells, edges };
}
