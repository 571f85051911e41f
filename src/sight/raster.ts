import type { Vec2 } from '../base/vector.ts';
import type { Grid } from './grid.ts';
import type { OwnerRows } from './ownerRows.ts';
import { DEPTH, STRIDE, type Shadows } from './shadowLayout.ts';
import { SpanLists, type RowSpans } from './spanLists.ts';

export type { RowSpans } from './spanLists.ts';

/** The nearest solid over each cell: its index, or −1, and its depth 1/t in single precision (0 where none). */
export interface Nearest {
  readonly solid: Int32Array;
  readonly depth: Float32Array;
}

export const nothingNearest = (cells: number): Nearest => ({
  solid: new Int32Array(cells).fill(-1),
  depth: new Float32Array(cells),
});

/** Sets all cells back to nothing. */
export function clearNearest({ solid, depth }: Nearest): void {
  solid.fill(-1);
  depth.fill(0);
}

/**
 * The nearest solid over each cell within `rows`: its index, or −1; what `owners` held there before does not matter. Where
 * depths tie, the lower index stays.
 * @param foot plane coordinates of the foot of the lens
 * Cost: rows × sides a shadow, and the stretches it meets in each row; a cell costs no more than its writing.
 */
export function fillOwners(
  shadows: Shadows,
  grid: Grid,
  foot: Vec2,
  rows: RowSpans,
  owners: Int32Array,
  scratch: OwnerRows,
): void {
  scratch.begin(shadows, grid, foot, rows);
  const { runs } = scratch;
  for (let row = 0; row < grid.rows; row += 1) {
    if ((rows[row * 2] ?? 0) > (rows[row * 2 + 1] ?? -1)) continue;
    const base = row * grid.columns;
    const count = scratch.lay(row);
    for (let run = 0; run < count; run += 3) {
      const owner = runs[run + 2] ?? -1;
      const from = base + (runs[run] ?? 0);
      const end = base + (runs[run + 1] ?? -1) + 1;
      if (end - from > 48) owners.fill(owner, from, end);
      else for (let cell = from; cell < end; cell += 1) owners[cell] = owner;
    }
  }
}

/**
 * As `fillOwners`, cell by cell and with depths, over what `into` holds already. On equal depth the lower index stays.
 * Cost: rows × sides a shadow, and its cells.
 */
export function fillNearest(shadows: Shadows, grid: Grid, foot: Vec2, rows: RowSpans, into: Nearest): void {
  const { numbers, solid } = shadows;
  const { cell, columns } = grid;
  const p0 = grid.left + cell / 2 - foot[0];
  const q0 = grid.bottom + cell / 2 - foot[1];
  const { solid: owners, depth: depths } = into;
  const spans = new SpanLists();
  spans.collect(shadows, grid, foot, rows);
  const { head, list } = spans;
  for (let row = 0; row < grid.rows; row += 1)
    for (let span = head[row] ?? -1; span >= 0; span = list[span + 3] ?? -1) {
      const shadow = list[span + 2] ?? 0;
      const depth = shadow * STRIDE + DEPTH;
      const owner = solid[shadow] ?? -1;
      const step = (numbers[depth] ?? 0) * cell;
      const until = row * columns + (list[span + 1] ?? -1);
      let s =
        (numbers[depth + 2] ?? 0) +
        (numbers[depth] ?? 0) * p0 +
        (numbers[depth + 1] ?? 0) * (q0 + row * cell) +
        step * (list[span] ?? 0);
      for (let index = row * columns + (list[span] ?? 0); index <= until; index += 1) {
        const single = Math.fround(s);
        if (single > (depths[index] ?? 0)) {
          depths[index] = single;
          owners[index] = owner;
        }
        s += step;
      }
    }
}
