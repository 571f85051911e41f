import { expect, test } from 'vitest';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { halfPlanesOf } from '../../src/sight/halfPlanes.ts';
import { SEEN, shareOut } from '../../src/sight/owners.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { fillNearest, nothingNearest } from '../../src/sight/raster.ts';
import { ringArea } from '../../src/sight/rings.ts';
import { rowSpansOf } from '../../src/sight/rowSpans.ts';
import { boundsOf, sightOf } from '../../src/sight/sightOf.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { wideCamera } from './wideCamera.ts';
import { boxSolid, randomYard } from './boxSolid.ts';

const WINDOW = [
  [-10, -10],
  [10, -10],
  [10, 10],
  [-10, 10],
] as const;

/** Shares what a camera sees of a plane, and counts 1 cm cells by the nearest solid: the same half-planes, another way to sum. */
function both(camera: Camera, solids: readonly Solid[], z: number) {
  const found = sightOf(camera, horizontalPlane(z), WINDOW, facetsOf(solids));
  if (found.halfPlanes === null || found.frame === null) return null;
  const frame = [...found.sight.frame];
  const corners = frame.flatMap((n, at) =>
    at % 2 === 0 ? [[n - found.footing.foot[0], (frame[at + 1] ?? 0) - found.footing.foot[1]] as const] : [],
  );
  const window = WINDOW.map(([x, y]) => [x - found.footing.foot[0], y - found.footing.foot[1]] as const);
  const bounds = boundsOf(corners, found.frame, halfPlanesOf(window));
  const rank = new Uint8Array(found.solids.count);
  const shared = shareOut(found.solids, found.solids.solid, rank, bounds);
  const cell = 0.01;
  const grid = { plane: horizontalPlane(z), left: -10, bottom: -10, cell, columns: 2000, rows: 2000 };
  const rows = rowSpansOf(grid, found.footing.foot, found.halfPlanes);
  const nearest = nothingNearest(4_000_000);
  fillNearest(found.solids, grid, found.footing.foot, rows, nearest);
  const counted = new Map<number, number>();
  for (let row = 0; row < 2000; row += 1)
    for (let column = rows[row * 2] ?? 0; column <= (rows[row * 2 + 1] ?? -1); column += 1) {
      const owner = nearest.solid[row * 2000 + column] ?? -1;
      counted.set(owner, (counted.get(owner) ?? 0) + cell * cell);
    }
  return { found, shared, counted, frame: ringArea(found.sight.frame) };
}

test('what hides first has the area that fine cells count, and all areas make up the frame', () => {
  const chance = chanceFrom(55);
  for (let trial = 0; trial < trials(6, 150); trial += 1) {
    const camera = {
      ...wideCamera,
      eye: [chance.between(-9, 9), chance.between(-9, 9), chance.between(1.9, 5)] as const,
      pan: chance.between(0, 360),
      tilt: chance.between(5, 60),
    };
    const made = both(camera, randomYard(chance.next, chance.whole(2, 12)), chance.pick([0, 1.6]));
    if (made === null || made.found.sight.lensInside !== null) continue;
    const { shared, counted, found, frame } = made;
    expect(shared.areas.get(SEEN) ?? 0, `seed 55, trial ${trial}`).toBeCloseTo(found.sight.seen.area, 6);
    const total = [...shared.areas.values()].reduce((sum, area) => sum + area, 0);
    expect(total).toBeCloseTo(frame, 6);
    for (const owner of new Set([...shared.areas.keys(), ...counted.keys()]))
      expect(
        Math.abs((shared.areas.get(owner) ?? 0) - (counted.get(owner) ?? 0)),
        `seed 55, trial ${trial}, ${owner}`,
      ).toBeLessThan(0.06);
  }
});

test('two fences that overlap at a corner with tops in one plane: each has its own shadow', () => {
  // The lower index takes the square where both tops lie; the sum of both cannot tell, so each is asked.
  // Turned off the cells' rows, along which a count of cells errs by a row a wall.
  const [c, s] = [Math.cos(0.13), Math.sin(0.13)];
  const turn = (0.13 * 180) / Math.PI;
  const one = boxSolid('one', [0, 0, 0], [6, 0.1, 1.8], turn);
  const two = boxSolid('two', [2.95 * c - 1.5 * s, 2.95 * s + 1.5 * c, 0], [0.1, 3.1, 1.8], turn);
  for (const pan of [0, 20, -25])
    for (const order of [
      [one, two],
      [two, one],
    ]) {
      const made = both({ ...wideCamera, pan, eye: [1, -6, 3] }, order, 0);
      if (made === null) throw new Error('the frame meets the ground');
      for (const owner of [SEEN, 0, 1])
        expect(
          Math.abs((made.shared.areas.get(owner) ?? 0) - (made.counted.get(owner) ?? 0)),
          `${pan}, ${owner}`,
        ).toBeLessThan(0.02);
    }
});

test('a sheet that cuts through a box hides to either side of the cut, whichever comes first', () => {
  const box = boxSolid('box', [0, 0, 0], [3, 3, 2]);
  const blade = boxSolid('blade', [0, 0, 0], [5, 0.2, 3], 30);
  for (const solids of [
    [box, blade],
    [blade, box],
  ]) {
    const made = both({ ...wideCamera, eye: [1, -7, 4] }, solids, 0);
    if (made === null) throw new Error('the frame meets the ground');
    for (const owner of [SEEN, 0, 1])
      expect(
        Math.abs((made.shared.areas.get(owner) ?? 0) - (made.counted.get(owner) ?? 0)),
        `${owner}`,
      ).toBeLessThan(0.02);
    expect(made.shared.areas.get(solids.indexOf(blade)) ?? 0).toBeGreaterThan(1);
  }
});

test('behind the top of a post the box and the sheet that cuts through it go on to either side of the cut', () => {
  const box = boxSolid('box', [0, 0, 0], [3, 3, 2]);
  const blade = boxSolid('blade', [0, 0, 0], [5, 0.2, 3], 30);
  // The ray to where the sheet leaves the top of the box, about (0, −0.1, 2), passes it at 2.8 m.
  const post = boxSolid('post', [0.4, -2.86, 0], [0.6, 0.2, 2.8], 7);
  for (const solids of [
    [box, blade, post],
    [post, blade, box],
  ]) {
    const made = both({ ...wideCamera, eye: [1, -7, 4] }, solids, 0);
    if (made === null) throw new Error('the frame meets the ground');
    for (const owner of [SEEN, 0, 1, 2])
      expect(
        Math.abs((made.shared.areas.get(owner) ?? 0) - (made.counted.get(owner) ?? 0)),
        `${owner}`,
      ).toBeLessThan(0.02);
  }
});
