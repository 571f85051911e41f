/** Heights without gaps, and how many were unknown. */
export interface Filled {
  readonly heights: Float64Array;
  readonly unknown: number;
}

/**
 * Gives each cell of a grid without height that of a nearest one with it; 0 to all where none has one.
 * Each cell hears from its neighbours which known cell is theirs, once from the south-west and once from the north-east: the
 * nearest, or now and then one a small part of a cell farther. Cost: linear in cells.
 */
export function filledHeights(given: readonly (number | null)[], columns: number, rows: number): Filled {
  const total = columns * rows;
  const heights = new Float64Array(total);
  const source = new Int32Array(total).fill(-1);
  let unknown = 0;
  for (let at = 0; at < total; at += 1) {
    const height = given[at] ?? null;
    if (height === null) unknown += 1;
    else [heights[at], source[at]] = [height, at];
  }
  if (unknown === 0 || unknown === total) return { heights, unknown };
  const distance2 = (from: number, column: number, row: number): number =>
    (column - (from % columns)) ** 2 + (row - Math.floor(from / columns)) ** 2;
  const hear = (column: number, row: number, dx: number, dy: number): void => {
    const [x, y] = [column + dx, row + dy];
    if (x < 0 || y < 0 || x >= columns || y >= rows) return;
    const said = source[y * columns + x] ?? -1;
    const own = source[row * columns + column] ?? -1;
    if (said < 0 || (own >= 0 && distance2(own, column, row) <= distance2(said, column, row))) return;
    source[row * columns + column] = said;
  };
  for (const way of [-1, 1] as const) {
    for (let j = 0; j < rows; j += 1) {
      const row = way < 0 ? j : rows - 1 - j;
      for (let i = 0; i < columns; i += 1) {
        const column = way < 0 ? i : columns - 1 - i;
        hear(column, row, way, 0);
        for (const side of [-1, 0, 1]) hear(column, row, side, way);
      }
      for (let i = 0; i < columns; i += 1) hear(way < 0 ? columns - 1 - i : i, row, -way, 0);
    }
  }
  source.forEach((from, at) => (heights[at] = heights[from] ?? 0));
  return { heights, unknown };
}
