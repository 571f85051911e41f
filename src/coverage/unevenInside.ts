import type { Solid } from '../model/solid.ts';
import { GROUND } from '../model/terrainSolid.ts';
import { INSIDE, OUT_OF_FRAME } from './state.ts';
import type { UnevenGround } from './unevenGround.ts';

/**
 * The state of each target over uneven ground before any camera looks: INSIDE a solid, else OUT_OF_FRAME.
 * A target is inside where above it lie more faces that look up than faces that look down. A face that it lies in counts as
 * below it, as `sliceAt` has it. Cost: linear in cells below faces.
 * @param solids all but the ground itself
 */
export function unevenInside(solids: readonly Solid[], ground: UnevenGround): Uint8Array {
  const bare = new Uint8Array(ground.targets.length).fill(OUT_OF_FRAME);
  const above = new Int16Array(ground.targets.length);
  for (const solid of solids) {
    if (solid.id === GROUND) continue;
    const touched: number[] = [];
    for (let t = 0; t < solid.triangles.length; t += 3) countAbove(solid, t, ground, above, touched);
    for (const cell of touched) {
      if ((above[cell] ?? 0) > 0) bare[cell] = INSIDE;
      above[cell] = 0;
    }
  }
  return bare;
}

/** Counts a face over the targets below it: one more where it looks up, one less where it looks down. */
function countAbove(
  { positions, triangles }: Solid,
  t: number,
  { grid, targets }: UnevenGround,
  above: Int16Array,
  touched: number[],
): void {
  const p = (k: number, axis: number): number => positions[(triangles[t + k] ?? 0) * 3 + axis] ?? 0;
  const [ax, ay, az] = [p(0, 0), p(0, 1), p(0, 2)];
  const [bx, by, bz] = [p(1, 0), p(1, 1), p(1, 2)];
  const [cx, cy, cz] = [p(2, 0), p(2, 1), p(2, 2)];
  const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  if (nz === 0) return;
  const slopeX = -((by - ay) * (cz - az) - (bz - az) * (cy - ay)) / nz;
  const slopeY = -((bz - az) * (cx - ax) - (bx - ax) * (cz - az)) / nz;
  const [least, most] = [Math.min(az, bz, cz), Math.max(az, bz, cz)];
  const { left, bottom, cell, columns, rows } = grid;
  const firstRow = Math.max(0, Math.ceil((Math.min(ay, by, cy) - bottom) / cell - 0.5));
  const lastRow = Math.min(rows - 1, Math.floor((Math.max(ay, by, cy) - bottom) / cell - 0.5));
  for (let row = firstRow; row <= lastRow; row += 1) {
    const y = bottom + (row + 0.5) * cell;
    const ends = [crossing(ax, ay, bx, by, y), crossing(bx, by, cx, cy, y), crossing(cx, cy, ax, ay, y)];
    const met = ends.filter((x) => x !== null);
    if (met.length < 2) continue;
    // Half open, so that of two faces that share an edge one has the centres on it.
    const from = Math.max(0, Math.ceil((Math.min(...met) - left) / cell - 0.5));
    const to = Math.min(columns, Math.ceil((Math.max(...met) - left) / cell - 0.5));
    for (let column = from; column < to; column += 1) {
      const x = left + (column + 0.5) * cell;
      const z = Math.min(most, Math.max(least, az + slopeX * (x - ax) + slopeY * (y - ay)));
      const at = row * columns + column;
      if (!(z > (targets[at] ?? 0))) continue;
      above[at] = (above[at] ?? 0) + (nz > 0 ? 1 : -1);
      touched.push(at);
    }
  }
}

/** Where an edge over ground crosses a row, the same bits from either side; null where it does not. */
function crossing(x0: number, y0: number, x1: number, y1: number, y: number): number | null {
  if (y0 > y === y1 > y) return null;
  return y0 < y1 ? x0 + ((y - y0) / (y1 - y0)) * (x1 - x0) : x1 + ((y - y1) / (y0 - y1)) * (x0 - x1);
}
