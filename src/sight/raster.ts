import type { Vec2 } from '../base/vector.ts';
import type { Grid } from './grid.ts';
import { HIGHS, RowEnds } from './rowEnds.ts';
import { BOX, DEPTH, STRIDE, type Shadows } from './shadows.ts';

/** First and last column of each row that a camera's frame can touch: two numbers a row; first > last where none. */
export type RowSpans = Int32Array;

/** The nearest solid over each cell: its index, or −1, and its depth 1/t in single precision (0 where none). */
export interface Nearest {
  readonly solid: Int32Array;
  readonly depth: Float32Array;
}

export const nothingNearest = (cells: number): Nearest => ({
  solid: new Int32Array(cells).fill(-1),
  depth: new Float32Array(cells),
});

/** Sets the cells within `rows` back to nothing. */
export function clearNearest({ solid, depth }: Nearest): void {
  solid.fill(-1);
  depth.fill(0);
}

/**
 * Fills each cell under a shadow with the solid nearest the lens, row by row. On equal depth the lower index stays.
 * @param foot plane coordinates of the foot of the lens
 * Where a side crosses the centres of a row is followed from row to row as x = start + step·row; where that comes within its
 * own rounding of a centre, the row's ends are those of the half-planes at the very centres, so that nothing is lost to it.
 * Cost: rows × sides a shadow, and its cells; no allocation a shadow.
 */
export function fillNearest(shadows: Shadows, grid: Grid, foot: Vec2, rows: RowSpans, into: Nearest): void {
  const { numbers, sides, solid, count } = shadows;
  const { cell, columns } = grid;
  const p0 = grid.left + cell / 2 - foot[0];
  const q0 = grid.bottom + cell / 2 - foot[1];
  const ends = new RowEnds(p0, q0, cell, numbers);
  const lines = ends.lines;
  const { solid: owners, depth: depths } = into;
  for (let shadow = 0; shadow < count; shadow += 1) {
    const base = shadow * STRIDE;
    // A shadow between two columns or rows of centres holds none.
    if (
      Math.ceil(((numbers[base + BOX] ?? 0) - p0) / cell) >
      Math.floor(((numbers[base + BOX + 2] ?? 0) - p0) / cell)
    )
      continue;
    let firstRow = Math.max(0, Math.ceil(((numbers[base + BOX + 1] ?? 0) - q0) / cell));
    let lastRow = Math.min(grid.rows - 1, Math.floor(((numbers[base + BOX + 3] ?? 0) - q0) / cell));
    if (firstRow > lastRow) continue;
    const end = base + (sides[shadow] ?? 0) * 3;
    ends.setUp(base, end, Math.max(Math.abs(firstRow), Math.abs(lastRow)));
    while (firstRow <= lastRow && ends.outsideFlat(firstRow)) firstRow += 1;
    while (firstRow <= lastRow && ends.outsideFlat(lastRow)) lastRow -= 1;
    const { lows, highs, slack } = ends;
    const owner = solid[shadow] ?? -1;
    const sa = (numbers[base + DEPTH] ?? 0) * cell;
    const sb = numbers[base + DEPTH + 1] ?? 0;
    const sk = (numbers[base + DEPTH + 2] ?? 0) + (numbers[base + DEPTH] ?? 0) * p0;
    for (let row = firstRow; row <= lastRow; row += 1) {
      let low = rows[row * 2] ?? 0;
      let high = rows[row * 2 + 1] ?? -1;
      let from = low - 0.5;
      let to = high + 0.5;
      for (let line = 0; line < lows; line += 2) {
        const x = (lines[line] ?? 0) + (lines[line + 1] ?? 0) * row;
        if (x > from) from = x;
      }
      for (let line = HIGHS; line < highs; line += 2) {
        const x = (lines[line] ?? 0) + (lines[line + 1] ?? 0) * row;
        if (x < to) to = x;
      }
      if (from > to + slack) continue;
      const first = Math.ceil(from - slack);
      const last = Math.floor(to + slack);
      if (first > last) continue;
      if (first === Math.ceil(from + slack) && last === Math.floor(to - slack)) {
        low = first;
        high = last;
      } else {
        ends.divide(base, end, row, low, high);
        low = ends.low;
        high = ends.high;
      }
      const at = row * columns + low;
      const until = at + high - low;
      let s = sk + sb * (q0 + row * cell) + sa * low;
      for (let index = at; index <= until; index += 1) {
        const single = Math.fround(s);
        if (single > (depths[index] ?? 0)) {
          depths[index] = single;
          owners[index] = owner;
        }
        s += sa;
      }
    }
  }
}
