import { expect, test } from 'vitest';
import { RunWriter, runsWhere, type RowRuns } from '../../src/coverage/rowRuns.ts';
import { relabelled, tallyRuns } from '../../src/coverage/tallyRuns.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { chanceFrom } from '../house/seeded.ts';

const gridOf = (columns: number, rows: number) => ({
  plane: horizontalPlane(0),
  left: 0,
  bottom: 0,
  cell: 1,
  columns,
  rows,
});

/** Runs of labels, of which −1 is none. */
function runsOf(labels: Int32Array, columns: number): RowRuns {
  const writer = new RunWriter();
  const rows = labels.length / columns;
  writer.begin(rows);
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const label = labels[row * columns + column] ?? -1;
      if (label >= 0) writer.put(column, column, label);
    }
    writer.endRow();
  }
  return writer.done();
}

/** The definition, cell by cell. */
function counted(labels: Int32Array, columns: number, most: number): { cells: number[]; edges: number[] } {
  const rows = labels.length / columns;
  const [cells, edges] = [new Array<number>(most).fill(0), new Array<number>(most).fill(0)];
  const at = (column: number, row: number): number | null =>
    column < 0 || row < 0 || column >= columns || row >= rows ? null : (labels[row * columns + column] ?? -1);
  labels.forEach((label, cell) => {
    if (label < 0) return;
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    const beside = [at(column - 1, row), at(column + 1, row), at(column, row - 1), at(column, row + 1)];
    cells[label] = (cells[label] ?? 0) + 1;
    if (beside.some((other) => other !== null && other !== label)) edges[label] = (edges[label] ?? 0) + 1;
  });
  return { cells, edges };
}

test('cells and edge cells of runs are those of the cells one by one, with and without a mask', () => {
  const chance = chanceFrom(31);
  for (let trial = 0; trial < 400; trial += 1) {
    const [columns, rows] = [chance.whole(1, 14), chance.whole(1, 9)];
    const most = chance.whole(1, 4);
    const grid = gridOf(columns, rows);
    const labels = new Int32Array(columns * rows);
    // Blocks as well as noise: most cells of a picture are like their neighbours.
    const noise = chance.next();
    labels.forEach((_, cell) => {
      const above = cell >= columns && chance.next() > noise ? labels[cell - columns] : undefined;
      labels[cell] = above ?? chance.whole(-1, most - 1);
    });
    const mask = Uint8Array.from(labels, () => (chance.next() < 0.9 ? 1 : 0));
    const runs = runsOf(labels, columns);
    const found = tallyRuns({ grid, runs }, most);
    expect({ cells: [...found.cells], edges: [...found.edges] }, `trial ${trial}`).toEqual(
      counted(labels, columns, most),
    );
    const masked = tallyRuns({ grid, runs: relabelled({ grid, runs }, (label) => label, mask) }, most);
    const kept = labels.map((label, cell) => (mask[cell] === 1 ? label : -1));
    expect({ cells: [...masked.cells], edges: [...masked.edges] }, `trial ${trial}, masked`).toEqual(
      counted(kept, columns, most),
    );
  }
});

test('two labels under one make one run, and a label below 0 none', () => {
  const grid = gridOf(6, 1);
  const runs = runsOf(Int32Array.of(0, 1, 2, 2, 0, -1), 6);
  const { list } = relabelled({ grid, runs }, (label) => (label === 2 ? -1 : 7), null);
  expect([...list]).toEqual([0, 1, 7, 4, 4, 7]);
});

test('the runs of a mask are its cells of a value', () => {
  const { starts, list } = runsWhere(Uint8Array.of(0, 0, 1, 0, 1, 1, 1, 1, 0, 0), 0, 5, 2);
  expect([...starts]).toEqual([0, 6, 9]);
  expect([...list]).toEqual([0, 1, 0, 3, 3, 0, 3, 4, 0]);
});
