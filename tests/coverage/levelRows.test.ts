import { expect, test } from 'vitest';
import { codeOf } from '../../src/coverage/cellCode.ts';
import { LevelRows } from '../../src/coverage/levelRows.ts';
import { RunWriter } from '../../src/coverage/rowRuns.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { COVERED, HIDDEN, TOO_COARSE } from '../../src/coverage/state.ts';
import { sureRows } from '../../src/coverage/sureRows.ts';
import { densityAt } from '../../src/optics/density.ts';
import { inFrame } from '../../src/optics/projection.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { footingOf } from '../../src/sight/footing.ts';
import { frameHalfPlanes } from '../../src/sight/frame.ts';
import { rowSpansOf } from '../../src/sight/rowSpans.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { cameraWith } from '../optics/sampleCamera.ts';

const BANDS = [25, 62.5, 125, 250].map((density) => ({ key: '', name: '', density }));

test('rows of a level plane are judged as single points are, for every law', () => {
  const chance = chanceFrom(83);
  let [covered, fallen, out] = [0, 0, 0];
  for (let trial = 0; trial < trials(30, 1500); trial += 1) {
    const camera = cameraWith({
      eye: [chance.between(-3, 3), chance.between(-3, 3), chance.between(-1, 7)],
      pan: chance.between(0, 360),
      tilt: chance.between(-20, 90),
      roll: chance.pick([0, chance.between(-90, 90)]),
      k: chance.pick([1, 0.5, 0, -0.5, -1, chance.between(-1, 1)]),
      focalLength: chance.between(1.2, 4),
      range: chance.between(4, 30),
      frame: { width: 2560, height: chance.pick([1440, 1900]) },
    });
    const grid = {
      plane: horizontalPlane(chance.pick([0, 1.6])),
      left: -12,
      bottom: -11,
      cell: 0.3,
      columns: 80,
      rows: 75,
    };
    const rule = new BandRule(
      BANDS,
      chance.pick([
        [],
        [
          { above: chance.between(10, 80), side: 180, band: 3 },
          { above: chance.between(10, 80), side: 180, band: 2 },
        ],
      ]),
      camera.range,
    );
    const footing = footingOf(camera.eye, grid.plane);
    const rows = rowSpansOf(grid, footing.foot, frameHalfPlanes(camera, footing));
    for (const hidden of [false, true]) {
      const writer = new RunWriter();
      const judge = new LevelRows(camera, grid, rule, sureRows(camera, footing, grid), writer);
      writer.begin(grid.rows);
      for (let row = 0; row < grid.rows; row += 1) {
        const [from, to] = [rows[row * 2] ?? 0, rows[row * 2 + 1] ?? -1];
        if (from <= to && hidden) judge.place(row, from, to, codeOf(HIDDEN, 0, 5));
        else if (from <= to) judge.open(row, from, to);
        writer.endRow();
      }
      const { starts, list } = writer.done();
      for (let row = 0; row < grid.rows; row += 1) {
        const codes = new Int32Array(grid.columns).fill(-1);
        for (let at = starts[row] ?? 0; at < (starts[row + 1] ?? 0); at += 3)
          codes.fill(list[at + 2] ?? 0, list[at] ?? 0, (list[at + 1] ?? 0) + 1);
        for (let column = 0; column < grid.columns; column += 1) {
          const x = grid.left + (column + 0.5) * grid.cell;
          const y = grid.bottom + (row + 0.5) * grid.cell;
          const z = grid.plane.origin[2];
          const framed = inFrame(camera, [x, y, z]);
          const density = densityAt(camera, [x, y, z])?.horizontal ?? 0;
          const [dx, dy, rise] = [x - camera.eye[0], y - camera.eye[1], camera.eye[2] - z];
          const band = rule.band(density, dx, dy, rise);
          const seen = codeOf(band > 0 ? COVERED : TOO_COARSE, rule.lost, band);
          const expected = !framed ? -1 : hidden ? codeOf(HIDDEN, 0, 5) : seen;
          expect(codes[column], `seed ${chance.seed}, trial ${trial}, cell ${column}, ${row}`).toBe(expected);
          if (!framed) out += 1;
          else if (rule.lost > 0) fallen += 1;
          else if (band > 0) covered += 1;
        }
      }
    }
  }
  expect(Math.min(covered, fallen, out)).toBeGreaterThan(2000);
});
