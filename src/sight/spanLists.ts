import type { Vec2 } from '../base/vector.ts';
import type { Grid } from './grid.ts';
import { HIGHS, RowEnds } from './rowEnds.ts';
import { BOX, STRIDE, type Shadows } from './shadowLayout.ts';

/** First and last column of each row that a camera's frame can touch: two numbers a row; first > last where none. */
export type RowSpans = Int32Array;

/**
 * The columns that shadows cover in each row of a grid: lists of spans, a row's in the order of their shadows. One object
 * serves many cameras, so that nothing is allocated but for growth.
 */
export class SpanLists {
  /** First span of each row, −1 where none. */
  head = new Int32Array(0);
  /** Of each span, from its place on: first and last column, shadow, and the place of the next span of the row or −1. */
  list = new Int32Array(4096);
  private used = 0;
  private tail = new Int32Array(0);

  /**
   * Where a side crosses the centres of a row is followed from row to row as x = start + step·row; where that comes within
   * its own rounding of a centre, the row's ends are those of the half-planes at the very centres, so that nothing is lost
   * to it. Cost: rows × sides a shadow.
   * @param foot plane coordinates of the foot of the lens
   */
  collect({ numbers, sides, count }: Shadows, grid: Grid, foot: Vec2, rows: RowSpans): void {
    const { cell } = grid;
    const p0 = grid.left + cell / 2 - foot[0];
    const q0 = grid.bottom + cell / 2 - foot[1];
    const ends = new RowEnds(p0, q0, cell, numbers);
    const lines = ends.lines;
    this.reset(grid.rows);
    for (let shadow = 0; shadow < count; shadow += 1) {
      const base = shadow * STRIDE;
      const box = base + BOX;
      // A shadow between two columns or rows of centres holds none.
      const left = Math.ceil(((numbers[box] ?? 0) - p0) / cell);
      if (left > Math.floor(((numbers[box + 2] ?? 0) - p0) / cell)) continue;
      let firstRow = Math.max(0, Math.ceil(((numbers[box + 1] ?? 0) - q0) / cell));
      let lastRow = Math.min(grid.rows - 1, Math.floor(((numbers[box + 3] ?? 0) - q0) / cell));
      if (firstRow > lastRow) continue;
      const end = base + (sides[shadow] ?? 0) * 3;
      ends.setUp(base, end, lastRow);
      while (firstRow <= lastRow && ends.outsideFlat(firstRow)) firstRow += 1;
      while (firstRow <= lastRow && ends.outsideFlat(lastRow)) lastRow -= 1;
      const { lows, highs, slack } = ends;
      for (let row = firstRow; row <= lastRow; row += 1) {
        const low = rows[row * 2] ?? 0;
        const high = rows[row * 2 + 1] ?? -1;
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
          this.add(row, first, last, shadow);
          continue;
        }
        ends.divide(base, end, row, low, high);
        if (ends.low <= ends.high) this.add(row, ends.low, ends.high, shadow);
      }
    }
  }

  private reset(rows: number): void {
    if (this.head.length < rows) {
      this.head = new Int32Array(rows);
      this.tail = new Int32Array(rows);
    }
    this.head.fill(-1);
    this.used = 0;
  }

  private add(row: number, low: number, high: number, shadow: number): void {
    const span = this.used;
    if (span === this.list.length) this.grow();
    const { list, head, tail } = this;
    list[span] = low;
    list[span + 1] = high;
    list[span + 2] = shadow;
    list[span + 3] = -1;
    if (head[row] === -1) head[row] = span;
    else list[(tail[row] ?? 0) + 3] = span;
    tail[row] = span;
    this.used = span + 4;
  }

  private grow(): void {
    const wide = new Int32Array(this.list.length * 2);
    wide.set(this.list);
    this.list = wide;
  }
}
