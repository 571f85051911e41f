import { expect, test } from 'vitest';
import { tallyCounts } from '../../src/coverage/tallyCounts.ts';
import { horizontalPlane } from '../../src/base/plane.ts';

/** Every column of every row. */
const wholeRows = ({ rows, columns }: { rows: number; columns: number }): Int32Array =>
  Int32Array.from({ length: rows * 2 }, (_, at) => (at % 2 === 0 ? 0 : columns - 1));

test('cells are counted for each number up to theirs, with those at an edge of it', () => {
  const grid = { plane: horizontalPlane(0), left: 0, bottom: 0, cell: 1, columns: 5, rows: 3 };
  const numbers = Uint8Array.from([1, 1, 1, 1, 0, 1, 2, 3, 1, 0, 1, 1, 1, 1, 9]);
  const mask = new Uint8Array(15).fill(1);
  mask[14] = 0;
  const { cells, edges } = tallyCounts({ grid, rows: wholeRows(grid) }, numbers, mask, 3);
  expect([...cells]).toEqual([12, 2, 1]);
  expect([...edges]).toEqual([3, 2, 1]);
});
