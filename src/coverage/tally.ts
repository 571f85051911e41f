import type { Grid } from '../sight/grid.ts';
import type { Area } from './area.ts';

/** Label of a cell that is not counted. */
export const NOT_COUNTED = -1;

/** Cells and edge cells (with a 4-neighbour of another label) by label. */
export interface Tally {
  readonly cells: Float64Array;
  readonly edges: Float64Array;
}

/**
 * Counts cells by label.
 * @param labels one a cell, from 0 below `most`; NOT_COUNTED leaves a cell out
 * Cost: one pass.
 */
export function tally(grid: Grid, labels: Int16Array, most: number): Tally {
  const { columns, rows } = grid;
  const cells = new Float64Array(most);
  const edges = new Float64Array(most);
  for (let row = 0; row < rows; row += 1) {
    const start = row * columns;
    for (let index = start; index < start + columns; index += 1) {
      const label = labels[index] ?? NOT_COUNTED;
      if (label === NOT_COUNTED) continue;
      cells[label] = (cells[label] ?? 0) + 1;
      const lone =
        (index > start && labels[index - 1] !== label) ||
        (index + 1 < start + columns && labels[index + 1] !== label) ||
        (row > 0 && labels[index - columns] !== label) ||
        (row + 1 < rows && labels[index + columns] !== label);
      if (lone) edges[label] = (edges[label] ?? 0) + 1;
    }
  }
  return { cells, edges };
}

/**
 * The area of a label: its cells, ± half of its edge cells.
 * Each edge cell may lie half on the other side; an interval that held in every trial of tests/coverage, not a proof.
 */
export function areaOf({ cells, edges }: Tally, label: number, grid: Grid): Area {
  const square = grid.cell * grid.cell;
  return { value: (cells[label] ?? 0) * square, bound: ((edges[label] ?? 0) * square) / 2, how: 'cells' };
}
