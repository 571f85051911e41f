import type { Vec2 } from '../base/vector.ts';
import type { Grid } from './grid.ts';
import { DEPTH, STRIDE, type Shadows } from './shadowLayout.ts';
import { SpanLists, type RowSpans } from './spanLists.ts';
import { StretchList } from './stretchList.ts';

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

/** What a row fill keeps between cameras, so that it allocates nothing. */
export class FillScratch {
  readonly spans = new SpanLists();
  readonly stretches = new StretchList();
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
  { spans, stretches }: FillScratch,
): void {
  const { numbers, solid } = shadows;
  const { cell, columns } = grid;
  const p0 = grid.left + cell / 2 - foot[0];
  const q0 = grid.bottom + cell / 2 - foot[1];
  spans.collect(shadows, grid, foot, rows);
  const { head, list } = spans;
  for (let row = 0; row < grid.rows; row += 1) {
    const first = rows[row * 2] ?? 0;
    const last = rows[row * 2 + 1] ?? -1;
    if (first > last) continue;
    const q = q0 + row * cell;
    stretches.reset(first, last);
    for (let span = head[row] ?? -1; span >= 0; span = list[span + 3] ?? -1) {
      const shadow = list[span + 2] ?? 0;
      const depth = shadow * STRIDE + DEPTH;
      const a = numbers[depth] ?? 0;
      const { depths } = stretches;
      depths[0] = (numbers[depth + 2] ?? 0) + a * p0 + (numbers[depth + 1] ?? 0) * q;
      depths[1] = a * cell;
      stretches.put(list[span] ?? 0, list[span + 1] ?? -1, solid[shadow] ?? -1);
    }
    stretches.write(owners, row * columns);
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
