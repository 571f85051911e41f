import type { Grid } from '../sight/grid.ts';

/** Cells along a side of the smallest tile, and tiles of one level along a side of the next. */
export const TILE = 8;
export const FOLD = 4;

/** Square tiles of one size, row by row from the south-west; those at the north and east ends may be narrower. */
export interface TileLevel {
  /** Cells along a side. */
  readonly size: number;
  readonly columns: number;
  readonly rows: number;
  /** Six numbers a tile: the middle of the box around its targets along x, y, z, then half its size. Site frame, m. */
  readonly boxes: Float64Array;
}

/** Boxes around the targets of ever larger tiles, until a few hold all. */
export function tileLevels(grid: Grid, targets: Float64Array): readonly TileLevel[] {
  const levels: TileLevel[] = [];
  let [low, high] = [targets, targets];
  let [across, up] = [grid.columns, grid.rows];
  for (let [size, fold] = [TILE, TILE]; ; [size, fold] = [size * FOLD, FOLD]) {
    const [columns, rows] = [Math.ceil(across / fold), Math.ceil(up / fold)];
    const [least, most] = [
      new Float64Array(columns * rows).fill(Infinity),
      new Float64Array(columns * rows).fill(-Infinity),
    ];
    for (let row = 0, at = 0; row < up; row += 1)
      for (let column = 0; column < across; column += 1, at += 1) {
        const tile = Math.floor(row / fold) * columns + Math.floor(column / fold);
        least[tile] = Math.min(least[tile] ?? 0, low[at] ?? 0);
        most[tile] = Math.max(most[tile] ?? 0, high[at] ?? 0);
      }
    levels.push({ size, columns, rows, boxes: boxesOf(grid, size, columns, least, most) });
    if (columns * rows <= FOLD) return levels;
    [low, high, across, up] = [least, most, columns, rows];
  }
}

function boxesOf(
  grid: Grid,
  size: number,
  columns: number,
  least: Float64Array,
  most: Float64Array,
): Float64Array {
  const boxes = new Float64Array(least.length * 6);
  least.forEach((low, tile) => {
    const high = most[tile] ?? low;
    const [column, row] = [(tile % columns) * size, Math.floor(tile / columns) * size];
    const [across, up] = [Math.min(size, grid.columns - column), Math.min(size, grid.rows - row)];
    boxes.set(
      [
        grid.left + (column + across / 2) * grid.cell,
        grid.bottom + (row + up / 2) * grid.cell,
        (low + high) / 2,
        ((across - 1) / 2) * grid.cell,
        ((up - 1) / 2) * grid.cell,
        (high - low) / 2,
      ],
      tile * 6,
    );
  });
  return boxes;
}
