import type { Grid } from '../sight/grid.ts';
import type { Area } from './area.ts';
import type { Cells } from './coverage.ts';
import { HIDDEN, SCREENED, STATES } from './state.ts';

/** Cells and edge cells (with a 4-neighbour of another label) by label. */
export interface Tally {
  readonly cells: Float64Array;
  readonly edges: Float64Array;
}

const newTally = (labels: number): Tally => ({ cells: new Float64Array(labels), edges: new Float64Array(labels) });

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
      const unlike = (other: number) => labels[other] !== label || mask[other] !== 1;
      if (
        (index > start && unlike(index - 1)) ||
        (index + 1 < start + columns && unlike(index + 1)) ||
        (row > 0 && unlike(index - columns)) ||
        (row + 1 < rows && unlike(index + columns))
      )
        raise(counts.edges, label);
    }
  }
  return counts;
}

/**
 * Counts what lies in the frame, within a mask: cells by state, and hidden ones by the solid that hides them. Edge cells are
 * counted for the states that have no exact area. Hidden and screened cells name different solids, so that a neighbour
 * with the same solid has the same state.
 */
export function tallyStates(cells: Cells, mask: Uint8Array, solids: number): { states: Tally; hiders: Tally } {
  const { state, hider, grid, rows } = cells;
  const states = newTally(STATES.length);
  const hiders = newTally(solids);
  const { columns } = grid;
  for (let row = 0; row < grid.rows; row += 1) {
    const start = row * columns;
    const end = start + (rows[row * 2 + 1] ?? -1);
    for (let index = start + (rows[row * 2] ?? 0); index <= end; index += 1) {
      if (mask[index] !== 1) continue;
      const here = state[index] ?? 0;
      raise(states.cells, here);
      if (here !== HIDDEN && here !== SCREENED) continue;
      const solid = hider[index] ?? 0;
      const left = index > start ? index - 1 : index;
      const right = index + 1 < start + columns ? index + 1 : index;
      const below = row > 0 ? index - columns : index;
      const above = row + 1 < grid.rows ? index + columns : index;
      if (
        state[left] !== here ||
        state[right] !== here ||
        state[below] !== here ||
        state[above] !== here ||
        mask[left] !== 1 ||
        mask[right] !== 1 ||
        mask[below] !== 1 ||
        mask[above] !== 1
      ) {
        raise(states.edges, here);
        if (here === HIDDEN) raise(hiders.edges, solid);
      } else if (
        here === HIDDEN &&
        (hider[left] !== solid || hider[right] !== solid || hider[below] !== solid || hider[above] !== solid)
      )
        raise(hiders.edges, solid);
      if (here === HIDDEN) raise(hiders.cells, solid);
    }
  }
  return { states, hiders };
}

/**
 * The area of a label: its cells, ± half of its edge cells.
 * Each edge cell may lie half on the other side; an interval that held in every trial of tests/coverage, not a proof.
 */
export function areaOf({ cells, edges }: Tally, label: number, grid: Grid): Area {
  const square = grid.cell * grid.cell;
  return { value: (cells[label] ?? 0) * square, bound: ((edges[label] ?? 0) * square) / 2, how: 'cells' };
}
