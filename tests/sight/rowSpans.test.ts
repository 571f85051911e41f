import { expect, test } from 'vitest';
import { horizontalPlane } from '../../src/base/plane.ts';
import { rowSpansOf } from '../../src/sight/rowSpans.ts';

const grid = { plane: horizontalPlane(0), left: -2, bottom: -2, cell: 0.5, columns: 8, rows: 8 };
const spans = (a: number, k: number) => [...rowSpansOf(grid, [0, 0], [[a, Math.sqrt(1 - a * a), k]])];

test('the columns of a row are those whose centres lie on the right side, its line included', () => {
  // x ≥ 0.25: the centres 0.25, 0.75, 1.25 and 1.75 are columns 4 to 7.
  expect(spans(1, -0.25)).toEqual(Array.from({ length: 8 }, () => [4, 7]).flat());
  expect(spans(-1, 0.25)).toEqual(Array.from({ length: 8 }, () => [0, 4]).flat());
  // y ≥ 0.25 likewise: rows 4 to 7.
  const rows = spans(0, -0.25);
  expect(rows.filter((_, at) => at % 2 === 1)).toEqual([-1, -1, -1, -1, 7, 7, 7, 7]);
});

test('a frame side that leans off the rows by a rounding leaves each row whole or empty', () => {
  // y ≥ 0 but for one part in 10¹⁷: an end 10¹⁶ columns away once came back negative, as 32 bits hold it, and hung the engine.
  for (const lean of [1e-17, -1e-17, 1e-12, -1e-12, 0]) {
    const rows = spans(lean, 0);
    for (let row = 0; row < 8; row += 1) {
      const [low, high] = [rows[row * 2] ?? 0, rows[row * 2 + 1] ?? 0];
      expect(Math.max(0, high - low + 1), `${lean}, row ${row}`).toBe(row < 4 ? 0 : 8);
      expect(low).toBeGreaterThanOrEqual(0);
      expect(high).toBeLessThan(8);
    }
  }
});
