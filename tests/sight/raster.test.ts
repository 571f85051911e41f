import { expect, test } from 'vitest';
import type { Camera } from '../../src/optics/camera.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { fillNearest, nothingNearest } from '../../src/sight/raster.ts';
import { rowSpansOf } from '../../src/sight/rowSpans.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { isSettled, isWithin, nearestBlocker } from '../oracle/bruteCaster.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { wideCamera } from './wideCamera.ts';
import { boxSolid, randomYard } from './boxSolid.ts';

const CAMERA: Camera = { ...wideCamera, eye: [0, 0, 3], pan: 30, tilt: 20 };

const WINDOW = [
  [-20, -20],
  [20, -20],
  [20, 20],
  [-20, 20],
] as const;

test('cells agree with every triangle tried, but for edges grazed within 2 mm', () => {
  const chance = chanceFrom(7);
  let judged = 0;
  let hidden = 0;
  for (let trial = 0; trial < trials(40, 1000); trial += 1) {
    const solids = randomYard(chance.next, chance.whole(1, 12));
    const plane = horizontalPlane(chance.pick([0, 0.5, 1.6, 2.7, 4]));
    const eye = [chance.between(-15, 15), chance.between(-15, 15), chance.between(0.5, 5)] as const;
    const camera = {
      ...CAMERA,
      eye,
      pan: chance.between(0, 360),
      tilt: chance.between(-10, 90),
      roll: chance.pick([0, 90, 17]),
    };
    const facets = facetsOf(solids);
    const found = sightOf(camera, plane, WINDOW, facets);
    const triangles = rawTriangles(solids);
    if (isWithin(triangles, eye)) continue;
    expect(found.sight.lensInside).toBe(null);
    const grid = { plane, left: -20, bottom: -20, cell: 0.25, columns: 160, rows: 160 };
    const nearest = nothingNearest(160 * 160);
    const rows = rowSpansOf(grid, found.footing.foot, found.frame);
    fillNearest(found.solids, grid, found.footing.foot, rows, nearest);
    for (let shot = 0; shot < 250; shot += 1) {
      const row = chance.whole(0, 159);
      const [low, high] = [rows[row * 2] ?? 0, rows[row * 2 + 1] ?? -1];
      if (low > high) continue;
      const column = chance.whole(low, high);
      const target = [-20 + (column + 0.5) * 0.25, -20 + (row + 0.5) * 0.25, plane.origin[2]];
      const owner = nearest.solid[row * 160 + column] ?? -1;
      const blocker = nearestBlocker(triangles, eye, target);
      judged += 1;
      if (owner >= 0) hidden += 1;
      if (owner >= 0 === (blocker !== null)) continue;
      expect(isSettled(triangles, eye, target, 0.002), `seed 7, trial ${trial}, ${target.join(' ')}`).toBe(
        false,
      );
    }
  }
  expect(judged).toBeGreaterThan(2000);
  expect(hidden / judged).toBeGreaterThan(0.1);
});

test('the solid nearest the lens is named; on equal depth the lower index', () => {
  const far = boxSolid('far', [0, 8, 0], [4, 0.2, 2]);
  const near = boxSolid('near', [0, 5, 0], [4, 0.2, 2]);
  const twin = boxSolid('twin', [0, 5, 0], [4, 0.2, 2]);
  const plane = horizontalPlane(0);
  const found = sightOf({ ...CAMERA, pan: 0 }, plane, WINDOW, facetsOf([far, near, twin]));
  const grid = { plane, left: -20, bottom: -20, cell: 0.1, columns: 400, rows: 400 };
  const nearest = nothingNearest(160_000);
  fillNearest(
    found.solids,
    grid,
    found.footing.foot,
    rowSpansOf(grid, found.footing.foot, found.frame),
    nearest,
  );
  const at = (x: number, y: number) =>
    nearest.solid[Math.round((y + 20) / 0.1) * 400 + Math.round((x + 20) / 0.1)];
  expect(at(0, 9)).toBe(1);
  expect(at(0, 4)).toBe(-1);
});
