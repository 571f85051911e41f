import { expect, test } from 'vitest';
import { horizontalPlane } from '../../src/base/plane.ts';
import { areaShadows } from '../../src/sight/areaShadows.ts';
import { SpanLists } from '../../src/sight/spanLists.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

const COLUMNS = 24;
const ROWS = 20;
const grid = { plane: horizontalPlane(0), left: -3, bottom: -2, cell: 0.25, columns: COLUMNS, rows: ROWS };
const centre = (column: number, row: number) => [-2.875 + column * 0.25, -1.875 + row * 0.25] as const;

/** By how far a place is inside a counter-clockwise triangle: the least distance from a side, negative outside. */
function depthIn(corners: readonly (readonly [number, number])[], [x, y]: readonly [number, number]): number {
  return Math.min(
    ...corners.map(([ax, ay], at) => {
      const [bx, by] = corners[(at + 1) % 3] ?? [ax, ay];
      return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay);
    }),
  );
}

test('the spans of a row hold the cells whose centres lie in a shadow, each once, by shadows in their order', () => {
  const chance = chanceFrom(94);
  const spans = new SpanLists();
  let [held, onEdge] = [0, 0];
  for (let trial = 0; trial < trials(150, 5000); trial += 1) {
    // Half of them have their corners on centres of cells, so that level and upright sides pass through centres.
    const any = () =>
      chance.next() < 0.5
        ? centre(chance.whole(-4, COLUMNS + 4), chance.whole(-4, ROWS + 4))
        : ([chance.between(-5, 5), chance.between(-4, 5)] as const);
    const triangles = Array.from({ length: chance.whole(1, 12) }, () => {
      const [a, b, c] = [any(), any(), any()];
      const onto = chance.next() < 0.4 ? ([c[0], a[1]] as const) : c;
      const corners = [a, [onto[0], b[1]] as const, onto];
      return (onto[0] - a[0]) * (b[1] - a[1]) < 0 ? corners : [a, onto, [onto[0], b[1]] as const];
    }).filter(
      (corners) =>
        depthIn(
          corners,
          corners.reduce(([x, y], [p, q]) => [x + p / 3, y + q / 3] as const, [0, 0] as const),
        ) > 1e-3,
    );
    const foot = [chance.pick([0, 0.5]), chance.pick([0, -1.25])] as const;
    const shadows = areaShadows(Float64Array.from(triangles.flat(2)), foot, 0);
    const rows = Int32Array.from({ length: ROWS * 2 }, (_, at) =>
      at % 2 === 0 ? chance.whole(0, 3) : chance.whole(18, COLUMNS - 1),
    );
    spans.collect(shadows, grid, foot, rows);
    for (let row = 0; row < ROWS; row += 1) {
      const found: string[] = [];
      const order: number[] = [];
      for (let span = spans.head[row] ?? -1; span >= 0; span = spans.list[span + 3] ?? -1) {
        const [low, high, shadow] = [...spans.list.subarray(span, span + 3)];
        order.push(shadow ?? -1);
        for (let column = low ?? 0; column <= (high ?? -1); column += 1) found.push(`${shadow}: ${column}`);
      }
      expect(order, `seed 94, trial ${trial}`).toEqual([...order].sort((a, b) => a - b));
      const wanted: string[] = [];
      const doubtful = new Set<string>();
      triangles.forEach((corners, shadow) => {
        for (let column = rows[row * 2] ?? 0; column <= (rows[row * 2 + 1] ?? -1); column += 1) {
          const depth = depthIn(corners, centre(column, row));
          if (depth >= 0) wanted.push(`${shadow}: ${column}`);
          if (depth === 0) onEdge += 1;
          // A slanted side may pass a centre by a rounding; level and upright ones are told exactly.
          const slanted = corners.some(([ax, ay], at) => {
            const [bx, by] = corners[(at + 1) % 3] ?? [ax, ay];
            const off =
              ((bx - ax) * (centre(0, row)[1] - ay) - (by - ay) * (centre(column, row)[0] - ax)) /
              Math.hypot(bx - ax, by - ay);
            return ax !== bx && ay !== by && Math.abs(off) < 1e-9;
          });
          if (slanted) doubtful.add(`${shadow}: ${column}`);
        }
      });
      const sure = (cells: readonly string[]) => cells.filter((cell) => !doubtful.has(cell));
      expect(sure(found), `seed 94, trial ${trial}, row ${row}`).toEqual(sure(wanted));
      held += wanted.length;
    }
  }
  expect(held).toBeGreaterThan(5000);
  expect(onEdge).toBeGreaterThan(100);
});
