import type { Grid } from '../sight/grid.ts';
import type { Area } from './area.ts';
import type { Cells } from './coverage.ts';
import { HIDDEN, INSIDE, SCREENED } from './state.ts';

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

/**
 * As `tally`, of labels above 0 only, and of cells in the frame only: outside it there are none.
 * @param rows first and last column in the frame, two numbers a row
 */
export function tallyMarked(
  { grid, rows }: Pick<Cells, 'grid' | 'rows'>,
  labels: Uint8Array,
  mask: Uint8Array,
  most: number,
): Tally {
  const { columns } = grid;
  const counts = newTally(most);
  for (let row = 0; row < grid.rows; row += 1) {
    const start = row * columns;
    const end = start + (rows[row * 2 + 1] ?? -1);
    for (let index = start + (rows[row * 2] ?? 0); index <= end; index += 1) {
      const label = labels[index] ?? 0;
      if (label === 0 || mask[index] !== 1) continue;
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
 * Counts what is hidden within a mask by what is in the way, what is screened, and what of the frame lies inside solids.
 * @param mask null where all cells count
 */
export function tallyHiders(
  cells: Cells,
  mask: Uint8Array | null,
  solids: number,
): { readonly hiders: Tally; readonly screens: Tally; readonly inside: Tally } {
  const { state, hider, grid, rows, density } = cells;
  const { columns } = grid;
  const hiders = newTally(solids);
  const screens = newTally(1);
  const inside = newTally(1);
  for (let row = 0; row < grid.rows; row += 1) {
    const start = row * columns;
    const end = start + (rows[row * 2 + 1] ?? -1);
    for (let index = start + (rows[row * 2] ?? 0); index <= end; index += 1) {
      const here = state[index] ?? 0;
      const within = here === INSIDE && (density[index] ?? 0) > 0;
      if (here !== HIDDEN && here !== SCREENED && !within) continue;
      if (mask !== null && mask[index] !== 1) continue;
      const solid = within ? -1 : (hider[index] ?? 0);
      const counts = within ? inside : here === SCREENED ? screens : hiders;
      const label = counts === hiders ? solid : 0;
      raise(counts.cells, label);
      const left = index > start ? index - 1 : index;
      const right = index + 1 < start + columns ? index + 1 : index;
      const below = row > 0 ? index - columns : index;
      const above = row + 1 < grid.rows ? index + columns : index;
      const lone =
        hider[left] !== solid ||
        hider[right] !== solid ||
        hider[below] !== solid ||
        hider[above] !== solid ||
        state[left] !== here ||
        state[right] !== here ||
        state[below] !== here ||
        state[above] !== here ||
        (mask !== null &&
          !(mask[left] === 1 && mask[right] === 1 && mask[below] === 1 && mask[above] === 1)) ||
        // The frame may end within a solid, where the state does not tell.
        (within &&
          !(
            (density[left] ?? 0) > 0 &&
            (density[right] ?? 0) > 0 &&
            (density[below] ?? 0) > 0 &&
            (density[above] ?? 0) > 0
          ));
      if (lone) raise(counts.edges, label);
    }
  }
  return { hiders, screens, inside };
}

/**
 * The area of a label: its cells, ± its edge cells.
 * Each edge cell, and its neighbour over the edge, may lie half on the other side. No proof: the cells of a part that is
 * thinner than a cell tell nothing of it, and tests/property holds how often and by how much that is missed.
 */
export function areaOf({ cells, edges }: Tally, label: number, grid: Grid): Area {
  const square = grid.cell * grid.cell;
  return { value: (cells[label] ?? 0) * square, bound: (edges[label] ?? 0) * square, how: 'cells' };
}
