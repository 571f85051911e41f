import { closedAt } from '../sight/closing.ts';
import type { Grid } from '../sight/grid.ts';
import { fillNearest, type RowSpans } from '../sight/raster.ts';
import type { FoundSight } from '../sight/sightOf.ts';
import type { Scratch } from './cells.ts';

/**
 * The nearest screen over each cell that is seen at so low an angle to its face that its gaps close up.
 * @returns null where no screen in the frame has a face
 */
export function closedCells(
  { sheets, footing, closing }: FoundSight,
  grid: Grid,
  rows: RowSpans,
  scratch: Scratch,
): Int32Array | null {
  if (sheets.length === 0) return null;
  const total = grid.columns * grid.rows;
  const closed = scratch.cleared('closed', total);
  const [p0, q0] = [
    grid.left + grid.cell / 2 - footing.foot[0],
    grid.bottom + grid.cell / 2 - footing.foot[1],
  ];
  for (const { normal, shadows } of sheets) {
    const sheet = scratch.cleared('sheet', total);
    fillNearest(shadows, grid, footing.foot, rows, sheet);
    for (let row = 0; row < grid.rows; row += 1) {
      const end = row * grid.columns + (rows[row * 2 + 1] ?? -1);
      for (let cell = row * grid.columns + (rows[row * 2] ?? 0); cell <= end; cell += 1) {
        const depth = sheet.depth[cell] ?? 0;
        if (depth <= (closed.depth[cell] ?? 0)) continue;
        const p = p0 + (cell - row * grid.columns) * grid.cell;
        if (closedAt(normal, closing, footing, p, q0 + row * grid.cell) <= 0) continue;
        closed.depth[cell] = depth;
        closed.solid[cell] = sheet.solid[cell] ?? -1;
      }
    }
  }
  return closed.solid;
}
