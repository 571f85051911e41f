import { expect, test } from 'vitest';
import { areasOf } from '../../src/coverage/areas.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { densityAt } from '../../src/optics/density.ts';
import { inFrame } from '../../src/optics/projection.ts';
import { OUT_OF_FRAME } from '../../src/coverage/state.ts';
import { BandRule, FROM_THE_SIDE, TOO_STEEP } from '../../src/coverage/rule.ts';
import type { Looks } from '../../src/coverage/target.ts';
import { cellsOf, Scratch } from '../../src/coverage/cells.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { fillNearest, nothingNearest } from '../../src/sight/raster.ts';
import { rowSpansOf } from '../../src/sight/rowSpans.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { randomYard } from '../sight/boxSolid.ts';

const BANDS = [25, 62.5, 125, 250].map((density) => ({ key: `${density}`, name: `${density}`, density }));
const CAPS = [
  { above: 20, side: 45, band: 3 },
  { above: 30, side: 60, band: 2 },
];
const WINDOW = [
  [-12, -12],
  [12, -12],
  [12, 12],
  [-12, 12],
] as const;

test('areas by band along curves agree with a count of 2 cm cells, for every lens law', () => {
  const chance = chanceFrom(21);
  const scratch = new Scratch();
  for (let trial = 0; trial < trials(5, 100); trial += 1) {
    const k = [1, 0.63, 0, -0.5, 1][trial % 5] ?? 1;
    const camera: Camera = {
      id: 'c',
      name: 'C1',
      eye: [chance.between(-10, 10), chance.between(-10, 10), chance.between(2.4, 4.5)],
      pan: chance.between(0, 360),
      tilt: chance.between(5, 70),
      roll: chance.pick([0, 90, 12]),
      focalLength: 2.8,
      k,
      sensor: { width: 5.37, height: 3.04 },
      frame: { width: 2688, height: 1520 },
      range: chance.between(6, 30),
    };
    const plane = horizontalPlane(1.6);
    const facets = facetsOf(randomYard(chance.next, 6));
    const looks = chance.pick<Looks | null>([
      null,
      { kind: 'bearing', bearing: chance.between(0, 360) },
      { kind: 'place', at: [chance.between(-12, 12), chance.between(-12, 12)] },
    ]);
    const rule = new BandRule(
      BANDS,
      CAPS,
      camera.range,
      looks && { to: looks, eye: [camera.eye[0], camera.eye[1]] },
    );
    const found = sightOf(camera, plane, WINDOW, facets);
    if (found.sight.lensInside !== null) continue;
    const coarse = { plane, left: -12, bottom: -12, cell: 0.5, columns: 48, rows: 48 };
    const none = new Uint8Array(48 * 48).fill(OUT_OF_FRAME);
    const zero = { value: 0, bound: 0, how: 'exact' } as const;
    const within = {
      mask: new Uint8Array(48 * 48).fill(1),
      total: zero,
      inside: zero,
      cut: new Float64Array(0),
      glazed: new Float64Array(0),
      parts: [WINDOW],
      whole: true,
    };
    const cells = cellsOf(camera, found, coarse, none, rule, scratch);
    const areas = areasOf(camera, cells, found, within, rule, facets.solids, 'exact');
    // The reference: cells of 2 cm, the plain projection and density at each centre, no outline and no curve.
    const fine = { plane, left: -12, bottom: -12, cell: 0.02, columns: 1200, rows: 1200 };
    const nearest = nothingNearest(1200 * 1200);
    fillNearest(found.solids, fine, found.footing.foot, rowSpansOf(fine, found.footing.foot, []), nearest);
    const counted = [0, 0, 0, 0];
    const lost = [0, 0, 0];
    let edge = 0;
    for (let row = 0; row < 1200; row += 1) {
      let before = -1;
      for (let column = 0; column < 1200; column += 1) {
        const point = [-12 + (column + 0.5) * 0.02, -12 + (row + 0.5) * 0.02, 1.6] as const;
        let band = 0;
        if ((nearest.solid[row * 1200 + column] ?? -1) < 0 && inFrame(camera, point)) {
          const [dx, dy] = [point[0] - camera.eye[0], point[1] - camera.eye[1]];
          band = rule.band(densityAt(camera, point)?.horizontal ?? 0, dx, dy, camera.eye[2] - 1.6);
          lost[rule.lost] = (lost[rule.lost] ?? 0) + 0.0004;
        }
        if (band > 0) counted[band - 1] = (counted[band - 1] ?? 0) + 0.0004;
        if (before >= 0 && before !== band) edge += 1;
        before = band;
      }
    }
    const { tooSteep, fromTheSide } = areas.lost;
    [...areas.byBand, tooSteep, fromTheSide].forEach(({ value, bound }, band) => {
      // Random rounding over `edge` cells: their root, times the cell, with room.
      const slack = 0.02 + Math.sqrt(edge) * 0.0004 * 4 + bound;
      expect(
        Math.abs(value - ([...counted, lost[TOO_STEEP], lost[FROM_THE_SIDE]][band] ?? 0)),
        `seed 21, trial ${trial}, k ${k}, band ${band}`,
      ).toBeLessThan(slack);
      expect(bound).toBeLessThan(0.1);
    });
  }
});
