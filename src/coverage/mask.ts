import type { Vec2 } from '../base/vector.ts';
import { sliceAt } from '../model/slice.ts';
import type { Solid } from '../model/solid.ts';
import type { Grid } from '../sight/grid.ts';

/**
 * One number a cell: 1 where its centre lies inside a solid.
 * @param above how far above the grid's plane that is asked, m: for a plane that is a face of a solid
 */
export function insideMask(solids: readonly Solid[], grid: Grid, above: number): Uint8Array {
  const mask = new Uint8Array(grid.columns * grid.rows);
  for (const solid of solids) fillEvenOdd(sliceAt(solid, grid.plane, above), grid, mask);
  return mask;
}

/** One number a cell: 1 where its centre lies within one of some rings. */
export function ringsMask(rings: readonly (readonly Vec2[])[], grid: Grid): Uint8Array {
  const mask = new Uint8Array(grid.columns * grid.rows);
  for (const ring of rings) {
    const segments = ring.flatMap((from, at) => [...from, ...(ring[(at + 1) % ring.length] ?? from)]);
    fillEvenOdd(Float64Array.from(segments), grid, mask);
  }
  return mask;
}

/** Sets the cells whose centres lie within closed outlines given as segments x, y, x, y. */
function fillEvenOdd(segments: Float64Array, grid: Grid, mask: Uint8Array): void {
  if (segments.length === 0) return;
  const { left, bottom, cell, columns, rows } = grid;
  let [low, high] = [Infinity, -Infinity];
  for (let at = 1; at < segments.length; at += 2) {
    low = Math.min(low, segments[at] ?? 0);
    high = Math.max(high, segments[at] ?? 0);
  }
  const firstRow = Math.max(0, Math.ceil((low - bottom) / cell - 0.5));
  const lastRow = Math.min(rows - 1, Math.floor((high - bottom) / cell - 0.5));
  const crossings: number[] = [];
  for (let row = firstRow; row <= lastRow; row += 1) {
    const y = bottom + (row + 0.5) * cell;
    crossings.length = 0;
    for (let at = 0; at < segments.length; at += 4) {
      const [x0, y0, x1, y1] = [
        segments[at] ?? 0,
        segments[at + 1] ?? 0,
        segments[at + 2] ?? 0,
        segments[at + 3] ?? 0,
      ];
      if (y0 > y !== y1 > y) crossings.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
    }
    crossings.sort((a, b) => a - b);
    for (let at = 0; at + 1 < crossings.length; at += 2) {
      const from = Math.max(0, Math.ceil(((crossings[at] ?? 0) - left) / cell - 0.5));
      const to = Math.min(columns - 1, Math.floor(((crossings[at + 1] ?? 0) - left) / cell - 0.5));
      if (to >= from) mask.fill(1, row * columns + from, row * columns + to + 1);
    }
  }
}
