/*
 * Source: GDAL 3.6.2 (Debian), gdal_viewshed -md 0 -cc 0 -oz 3 -tz 0, on a flat site of 200 × 200 m with a wall 2 m high at 50 ≤ x < 51
 * and the observer above the cell at x = 20, y = 100, run outside this project: behind the wall hidden ground ends at 3 times the
 * distance of the last sample of the wall: 90.0 m from the observer at cells of 1 m, 91.5 m at 0.5 m. All open cells but 142 and 32,
 * which lie exactly on the end, agree with the shadow by similar triangles, H / (H − w) times the distance.
 */
import { expect, test } from 'vitest';
import { Scratch } from '../../../src/coverage/cells.ts';
import { unevenBlocked } from '../../../src/coverage/unevenCells.ts';
import { unevenGround } from '../../../src/coverage/unevenGround.ts';
import { terrainOfGrid } from '../../../src/model/terrainGrid.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { horizontalPlane } from '../../../src/base/plane.ts';

test.each([
  { cell: 1, end: 90, open: 39_800, onEnd: 142 },
  { cell: 0.5, end: 91.5, open: 159_200, onEnd: 32 },
])(
  'behind a wall on a grid of $cell m hidden ground ends $end m off, as GDAL has it',
  ({ cell, end, open, onEnd }) => {
    const columns = 200 / cell;
    const isWall = (column: number) => (column + 0.5) * cell > 50 && (column + 0.5) * cell < 51;
    const heights = Array.from({ length: columns * columns }, (_, at) => (isWall(at % columns) ? 2 : 0));
    const cells = { left: 0, bottom: 0, cell, columns, rows: columns };
    const { terrain } = terrainOfGrid({ ...cells, heights }, { left: 0, bottom: 0, right: 200, top: 200 });
    const ground = unevenGround(terrain, 0, { ...cells, plane: horizontalPlane(0) });
    // The tool's observer stands at the centre of a cell.
    const observer = [20 + cell / 2, 100 + cell / 2] as const;
    const blocked = unevenBlocked([...observer, 3], ground, facetsOf([terrain.solid]), new Scratch());
    const last = (Math.ceil(51 / cell) - 0.5) * cell;
    expect(3 * (last - observer[0])).toBe(end);

    const [wrong, asked, ends] = [new Set<string>(), new Set<number>(), new Set<number>()];
    blocked.forEach((is, at) => {
      const [column, row] = [at % columns, Math.floor(at / columns)];
      const x = (column + 0.5) * cell;
      if (isWall(column)) return;
      asked.add(at);
      const beyond = (x - observer[0]) / (last - observer[0]);
      // Exactly at the end either answer holds, and the tool's two differ too; ours fills the slope behind the wall's last sample.
      if (Math.abs(beyond - 3) < 1e-9) ends.add(at);
      else if ((is === 1) !== (beyond > 1 && beyond < 3)) wrong.add(`${x} ${row}`);
    });
    expect([...wrong]).toEqual([]);
    expect(asked.size).toBe(open);
    // As many as the grid has in that column; the tool counted those that it has on the other side of its rounding.
    expect(ends.size).toBeGreaterThanOrEqual(onEnd);
  },
);
