import type { Camera } from '../../src/optics/camera.ts';
import type { Grid } from '../../src/sight/grid.ts';
import type { RowSpans } from '../../src/sight/raster.ts';

/** The cells in the frame of one camera, row by row: three coordinates of each centre, and 1 where we say hidden. */
export interface FramedCells {
  readonly camera: Camera;
  readonly targets: Float64Array;
  readonly hidden: Uint8Array;
}

export function framedCells(camera: Camera, grid: Grid, rows: RowSpans, solid: Int32Array): FramedCells {
  const { plane, left, bottom, cell, columns } = grid;
  let count = 0;
  const each = (visit: (row: number, column: number) => void) => {
    for (let row = 0; row < grid.rows; row += 1)
      for (let column = rows[row * 2] ?? 0; column <= (rows[row * 2 + 1] ?? -1); column += 1)
        visit(row, column);
  };
  each(() => (count += 1));
  const targets = new Float64Array(count * 3);
  const hidden = new Uint8Array(count);
  let at = 0;
  each((row, column) => {
    const [a, b] = [left + (column + 0.5) * cell, bottom + (row + 0.5) * cell];
    for (const axis of [0, 1, 2] as const)
      targets[at * 3 + axis] = plane.origin[axis] + a * plane.u[axis] + b * plane.v[axis];
    hidden[at] = (solid[row * columns + column] ?? -1) >= 0 ? 1 : 0;
    at += 1;
  });
  return { camera, targets, hidden };
}
