import type { Grid } from '../sight/grid.ts';
import type { Plane } from '../base/plane.ts';

/** The cell that coverage is worked out in while there is room, m. */
export const FINE_CELL = 0.1;
/** Above this many cells they become coarser. */
const MOST_CELLS = 400_000;

/** Cells of a rectangle of the plane: 0.10 m up to MOST_CELLS of them, then coarser; or of a size asked for. */
export function boardGrid(
  plane: Plane,
  rectangle: { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number },
  cell = cellFor(rectangle.right - rectangle.left, rectangle.top - rectangle.bottom),
): Grid {
  // A whole number of cells is not made one more by the last bit of a division.
  const whole = (size: number) => Math.max(1, Math.ceil(size / cell - 1e-6));
  return {
    plane,
    left: rectangle.left,
    bottom: rectangle.bottom,
    cell,
    columns: whole(rectangle.right - rectangle.left),
    rows: whole(rectangle.top - rectangle.bottom),
  };
}

/** The finest cell, in steps of 0.05 m, that keeps a rectangle within MOST_CELLS. */
export function cellFor(width: number, height: number): number {
  const fair = Math.sqrt((width * height) / MOST_CELLS);
  if (fair <= FINE_CELL) return FINE_CELL;
  let steps = Math.ceil(fair / 0.05 - 1e-9);
  while (Math.ceil(width / (steps * 0.05)) * Math.ceil(height / (steps * 0.05)) > MOST_CELLS) steps += 1;
  return steps / 20;
}
