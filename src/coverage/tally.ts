import type { Grid } from '../sight/grid.ts';
import type { Area } from './area.ts';

/** Cells and edge cells (with a 4-neighbour of another label) by label. */
export interface Tally {
  readonly cells: Float64Array;
  readonly edges: Float64Array;
}

const newTally = (labels: number): Tally => ({
  cells: new Float64Array(labels),
  edges: new Float64Array(labels),
});

const raise = (counts: Float64Array, at: number): void => {
  counts[at] = (counts[at] ?? 0) + 1;
};

/**
 * Counts the cells of a mask by label.
 * @param labels one a cell, below `most`
 * @param mask   1 where cells count; its own edge makes edge cells
 */
export function tally(grid: Grid, labels: Uint8Array, mask: Uint8Array, most: number): Tally {
  const { columns, rows } = grid;
  const counts = newTally(most);
  for (let row = 0; row < rows; row += 1) {
    const start = row * columns;
    for (let index = start; index < start + columns; index += 1) {
      if (mask[index] !== 1) continue;
      const label = labels[index] ?? 0;
      raise(counts.cells, label);
      if (isEdge(index, row, grid, labels, mask)) raise(counts.edges, label);
    }
  }
  return counts;
}

/** Whether a 4-neighbour of a cell has another label or lies outside the mask. */
function isEdge(index: number, row: number, grid: Grid, labels: Uint8Array, mask: Uint8Array): boolean {
  const { columns } = grid;
  const start = row * columns;
  const label = labels[index];
  const left = index > start ? index - 1 : index;
  const right = index + 1 < start + columns ? index + 1 : index;
  const below = row > 0 ? index - columns : index;
  const above = row + 1 < grid.rows ? index + columns : index;
  return (
    labels[left] !== label ||
    labels[right] !== label ||
    labels[below] !== label ||
    labels[above] !== label ||
    mask[left] !== 1 ||
    mask[right] !== 1 ||
    mask[below] !== 1 ||
    mask[above] !== 1
  );
}

/**
 * The area of a label: its cells, ± its edge cells.
 * Each edge cell, and its neighbour over the edge, may lie half on the other side. No proof, so that it is not printed: the
 * cells of a part that is thinner than a cell tell nothing of it. What surely holds is in brackets.ts.
 */
export function areaOf({ cells, edges }: Tally, label: number, grid: Grid): Area {
  const square = grid.cell * grid.cell;
  return { value: (cells[label] ?? 0) * square, bound: (edges[label] ?? 0) * square, how: 'cells' };
}
