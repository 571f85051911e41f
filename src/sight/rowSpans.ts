import type { Vec2 } from '../base/vector.ts';
import type { Grid } from './grid.ts';
import type { HalfPlanes } from './halfPlanes.ts';
import type { RowSpans } from './raster.ts';

/** The columns of each row whose centres lie in all half-planes. */
export function rowSpansOf(grid: Grid, foot: Vec2, halfPlanes: HalfPlanes | null): RowSpans {
  const spans = new Int32Array(grid.rows * 2);
  const p0 = grid.left + grid.cell / 2 - foot[0];
  const q0 = grid.bottom + grid.cell / 2 - foot[1];
  for (let row = 0; row < grid.rows; row += 1) {
    let low = 0;
    let high = halfPlanes === null ? -1 : grid.columns - 1;
    for (const [a, b, k] of halfPlanes ?? []) {
      const slope = a * grid.cell;
      const here = a * p0 + b * (q0 + row * grid.cell) + k;
      if (slope > 0) low = Math.max(low, Math.ceil(-here / slope));
      else if (slope < 0) high = Math.min(high, Math.floor(-here / slope));
      else if (here < 0) high = -1;
    }
    // A line that all but follows the rows crosses them anywhere, also where 32 bits would wrap around to the other side.
    spans[row * 2] = Math.min(low, grid.columns);
    spans[row * 2 + 1] = Math.max(high, -1);
  }
  return spans;
}
