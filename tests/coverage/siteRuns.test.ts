import { expect, test } from 'vitest';
import { codeOf } from '../../src/coverage/cellCode.ts';
import { JudgedCells } from '../../src/coverage/judgedCells.ts';
import { RunWriter } from '../../src/coverage/rowRuns.ts';
import { siteOf } from '../../src/coverage/site.ts';
import { COVERED, HIDDEN, INSIDE, OUT_OF_FRAME, TOO_COARSE } from '../../src/coverage/state.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { chanceFrom, type Chance } from '../house/seeded.ts';

const BANDS = 4;
const [COLUMNS, ROWS] = [13, 8];
const GRID = { plane: horizontalPlane(0), left: 0, bottom: 0, cell: 0.5, columns: COLUMNS, rows: ROWS };

/** Cells of a camera by chance: hidden, too coarse or covered, in a frame of its own. */
function cellsBy(chance: Chance, bare: Uint8Array): JudgedCells {
  const writer = new RunWriter();
  const rows = new Int32Array(ROWS * 2);
  writer.begin(ROWS);
  for (let row = 0; row < ROWS; row += 1) {
    const first = chance.whole(0, COLUMNS);
    const last = chance.whole(-1, COLUMNS - 1);
    rows[row * 2] = first;
    rows[row * 2 + 1] = last;
    let code = 0;
    for (let column = first; column <= last; column += 1) {
      const band = chance.whole(1, BANDS);
      if (column === first || chance.next() < 0.4)
        code = chance.pick([codeOf(HIDDEN, 0, 3), codeOf(TOO_COARSE, 0, 0), codeOf(COVERED, 0, band)]);
      writer.put(column, column, bare[row * COLUMNS + column] === INSIDE ? codeOf(INSIDE, 0, 0) : code);
    }
    writer.endRow();
  }
  const density = Float32Array.from(bare, () => chance.whole(1, 3));
  const sent = { rows, runs: writer.done(), faces: false };
  return new JudgedCells(GRID, sent, bare, { density, across: null });
}

test('cameras put together by runs are those put together cell by cell', () => {
  const chance = chanceFrom(37);
  for (let trial = 0; trial < 200; trial += 1) {
    const bare = new Uint8Array(COLUMNS * ROWS).map(() => (chance.next() < 0.1 ? INSIDE : OUT_OF_FRAME));
    const many = chance.whole(0, 5);
    const cells = Array.from({ length: many }, () => cellsBy(chance, bare));
    const counted = bare.map((state) => (state !== INSIDE && chance.next() < 0.95 ? 1 : 0));
    const open = { value: 100, bound: 0, how: 'exact' } as const;
    const index = cells.map((_, at) => at + 2);
    const site = siteOf(GRID, cells, index, counted, open, BANDS);
    const best = bare.map((_, cell) => Math.max(0, ...cells.map(({ band }) => band[cell] ?? 0)));
    const covers = (cell: number) => cells.filter(({ band }) => (band[cell] ?? 0) > 0);
    expect([...site.band], `trial ${trial}`).toEqual([...best]);
    expect([...site.count], `trial ${trial}`).toEqual([...bare.keys()].map((cell) => covers(cell).length));
    site.best.forEach((who, cell) => {
      const giving = cells.filter(({ band }) => best[cell] !== 0 && band[cell] === best[cell]);
      const finest = Math.max(...giving.map(({ density }) => density[cell] ?? 0));
      const first = cells.findIndex((one) => giving.includes(one) && one.density[cell] === finest);
      expect(who, `trial ${trial}, cell ${cell}`).toBe(first < 0 ? 255 : first + 2);
    });
    const square = 0.25;
    const where = (holds: (cell: number) => boolean) => {
      const on = (cell: number) => counted[cell] === 1 && holds(cell);
      const beside = (cell: number) => [
        ...(cell % COLUMNS > 0 ? [cell - 1] : []),
        ...(cell % COLUMNS < COLUMNS - 1 ? [cell + 1] : []),
        ...(cell >= COLUMNS ? [cell - COLUMNS] : []),
        ...(cell < COLUMNS * (ROWS - 1) ? [cell + COLUMNS] : []),
      ];
      const all = [...bare.keys()].filter(on);
      const edge = all.filter((cell) => beside(cell).some((other) => !on(other)));
      return { value: all.length * square, bound: edge.length * square, how: 'cells' };
    };
    expect(site.byBand, `trial ${trial}`).toEqual(
      Array.from({ length: BANDS }, (_, band) => where((cell) => best[cell] === band + 1)),
    );
    expect(site.byCount, `trial ${trial}`).toEqual(
      cells.map((_, least) => where((cell) => covers(cell).length > least)),
    );
  }
});
