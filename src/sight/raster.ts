import type { Vec2 } from '../base/vector.ts';
import type { Grid } from './grid.ts';
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
 * Cost: rows × sides a shadow, and its cells; no allocation.
 */
export function fillNearest(shadows: Shadows, grid: Grid, foot: Vec2, rows: RowSpans, into: Nearest): void {
  const { numbers, sides, solid } = shadows;
  const { cell, columns } = grid;
  const p0 = grid.left + cell / 2 - foot[0];
  const q0 = grid.bottom + cell / 2 - foot[1];
  const { solid: owners, depth: depths } = into;
  for (let shadow = 0; shadow < shadows.count; shadow += 1) {
    const base = shadow * STRIDE;
    const firstRow = Math.max(0, Math.ceil(((numbers[base + BOX + 1] ?? 0) - q0) / cell));
    const lastRow = Math.min(grid.rows - 1, Math.floor(((numbers[base + BOX + 3] ?? 0) - q0) / cell));
    const sidesHere = base + (sides[shadow] ?? 0) * 3;
    const owner = solid[shadow] ?? -1;
    const sa = (numbers[base + DEPTH] ?? 0) * cell;
    const sb = numbers[base + DEPTH + 1] ?? 0;
    const sk = (numbers[base + DEPTH + 2] ?? 0) + (numbers[base + DEPTH] ?? 0) * p0;
    for (let row = firstRow; row <= lastRow; row += 1) {
      let low = rows[row * 2] ?? 0;
      let high = rows[row * 2 + 1] ?? -1;
      const q = q0 + row * cell;
      for (let side = base; side < sidesHere && low <= high; side += 3) {
        const slope = (numbers[side] ?? 0) * cell;
        const here = (numbers[side] ?? 0) * p0 + (numbers[side + 1] ?? 0) * q + (numbers[side + 2] ?? 0);
        // a·cell·i + here ≥ 0
        if (slope > 0) {
          const from = Math.ceil(-here / slope);
          if (from > low) low = from;
        } else if (slope < 0) {
          const to = Math.floor(-here / slope);
          if (to < high) high = to;
        } else if (here < 0) high = low - 1;
      }
      if (low > high) continue;
      const at = row * columns;
      let s = sk + sb * q + sa * low;
      for (let index = at + low; index <= at + high; index += 1, s += sa) {
        const single = Math.fround(s);
        if (single > (depths[index] ?? 0)) {
          depths[index] = single;
          owners[index] = owner;
        }
      }
    }
  }
}
