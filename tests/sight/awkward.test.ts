import { expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { cellsOf, Scratch } from '../../src/coverage/cells.ts';
import { COVERED, HIDDEN, OUT_OF_FRAME, TOO_COARSE } from '../../src/coverage/state.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { ringArea } from '../../src/sight/rings.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { isSettled, isWithin, nearestBlocker } from '../oracle/bruteCaster.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { boxSolid } from './boxSolid.ts';

/** A yard with a house, a bay within its front and top, an annex that goes on in line, crossing fences and a raised board. */
const yard = (x: number, y: number) => [
  boxSolid('house', [x, y, 0], [8, 6, 3]),
  boxSolid('bay', [x - 1, y - 2, 0], [3, 2, 3]),
  boxSolid('annex', [x + 6, y - 1, 0], [4, 4, 3]),
  boxSolid('fence', [x - 8, y, 0], [0.05, 14, 1.8]),
  boxSolid('gate', [x - 8, y + 7, 0], [3, 0.05, 1.8]),
  boxSolid('turned', [x + 3, y - 8, 0], [5, 0.05, 1.8], 33),
  boxSolid('board', [x + 1, y - 4, 2.4], [3, 1.5, 0.15]),
  boxSolid('step', [x + 2, y - 3.3, 0], [1.4, 0.6, 0.0005]),
];

/** Places and aims that sit exactly on something. */
function awkward(
  chance: Chance,
  x: number,
  y: number,
): { eye: Vec3; pan: number; tilt: number; roll: number; k: number; plane: number } {
  const eyes: readonly Vec3[] = [
    [x - 4, y - 3, 2.4], // on the corner of the house
    [x - 4.002, y - 2, 2.4], // 2 mm off a wall, in nobody's plane
    [x, y - 3.002, 2.7], // flush on the south wall
    [x - 8, y - 9, 2.2], // in the plane of the fence
    [x + 1, y - 4, 2.398], // just under the board
    [x + 4, y - 7, 1.8], // at the height of the fences' tops
    [x - 8.025, y + 6.975, 3], // straight above a vertex
    [x + 10, y - 10, 0.4], // below the face plane
    [x + 3, y + 9, 5],
  ];
  return {
    eye: chance.pick(eyes),
    pan: chance.pick([0, 45, 90, 180, 225, 270, 33.3]),
    tilt: chance.pick([0, 20, 45, 90, -15]),
    roll: chance.pick([0, 90, 180, 12]),
    k: chance.pick([1, 1, 0.6, 0, -0.5]),
    plane: chance.pick([0, 0.5, 1.6, 1.8]),
  };
}

const BANDS = [{ key: 'any', name: 'any', density: 1 }];

function tryOut(
  seed: number,
  x: number,
  y: number,
  many: number,
): { judged: number; wrong: string[]; open: number } {
  const chance = chanceFrom(seed);
  const solids = yard(x, y);
  const facets = facetsOf(solids);
  const triangles = rawTriangles(solids);
  const window = [
    [x - 15, y - 15],
    [x + 15, y - 15],
    [x + 15, y + 15],
    [x - 15, y + 15],
  ] as const;
  const rule = new BandRule(BANDS, [], 1000);
  const scratch = new Scratch();
  const found: { judged: number; wrong: string[]; open: number } = { judged: 0, wrong: [], open: 0 };
  for (let trial = 0; trial < many; trial += 1) {
    const { eye, pan, tilt, roll, k, plane: z } = awkward(chance, x, y);
    const wide = k <= 0;
    const camera: Camera = {
      id: 'c',
      name: 'C1',
      eye,
      pan,
      tilt,
      roll,
      k,
      focalLength: wide ? 1.5 : 2.8,
      sensor: { width: 5.37, height: 3.04 },
      frame: { width: 2688, height: 1520 },
      range: 1000,
    };
    const plane = horizontalPlane(z);
    const sight = sightOf(camera, plane, window, facets);
    if (isWithin(triangles, eye)) continue;
    const grid = { plane, left: x - 15.013, bottom: y - 15.017, cell: 0.3, columns: 100, rows: 100 };
    const cells = cellsOf(camera, sight, grid, new Uint8Array(10_000).fill(OUT_OF_FRAME), rule, scratch);
    const { seen } = sight.sight;
    if (!seen.ringsClosed) found.open += 1;
    const rings = seen.rings.reduce((sum, ring) => sum + ringArea(ring), 0);
    if (Math.abs(rings - seen.area) > 1e-3 + 2e-4 * seen.area)
      found.wrong.push(`trial ${trial}: rings ${rings}, spans ${seen.area}`);
    for (let shot = 0; shot < 60; shot += 1) {
      const cell = chance.whole(0, 9999);
      const state = cells.state[cell] ?? 0;
      if (state === OUT_OF_FRAME) continue;
      const target = [
        grid.left + ((cell % 100) + 0.5) * 0.3,
        grid.bottom + (Math.floor(cell / 100) + 0.5) * 0.3,
        z,
      ];
      if (isWithin(triangles, target) || isWithin(triangles, [target[0] ?? 0, target[1] ?? 0, z + 1e-6]))
        continue;
      found.judged += 1;
      const hidden = nearestBlocker(triangles, eye, target) !== null;
      if (hidden === (state === HIDDEN) && (hidden || state === COVERED || state === TOO_COARSE)) continue;
      if (isSettled(triangles, eye, target, 0.002))
        found.wrong.push(`trial ${trial}: ${target.join(' ')} from ${eye.join(' ')}`);
    }
  }
  return found;
}

test('cameras that sit exactly on planes, edges and corners see what rays see', () => {
  const { judged, wrong, open } = tryOut(404, 0, 0, trials(150, 3000));
  expect(wrong).toEqual([]);
  expect(judged).toBeGreaterThan(500);
  expect(open).toBeLessThan(trials(150, 3000) * 0.05);
});

test('a hundred kilometres from the origin nothing changes', () => {
  const { judged, wrong } = tryOut(405, 71_234.5, -68_765.25, trials(60, 1000));
  expect(wrong).toEqual([]);
  expect(judged).toBeGreaterThan(200);
});

test('a lens inside a wall sees nothing and says which; one 0.4 mm in still sees out', () => {
  const facets = facetsOf(yard(0, 0));
  const window = [
    [-15, -15],
    [15, -15],
    [15, 15],
    [-15, 15],
  ] as const;
  const at = (depth: number) => {
    const eye: Vec3 = [0, -3 + depth, 2.4];
    const camera = {
      id: 'c',
      name: 'C1',
      eye,
      pan: 180,
      tilt: 25,
      roll: 0,
      k: 1,
      focalLength: 2.8,
      sensor: { width: 5.37, height: 3.04 },
      frame: { width: 2688, height: 1520 },
      range: 50,
    };
    return sightOf(camera, horizontalPlane(0), window, facets).sight;
  };
  expect(at(0.05).lensInside).toBe(0);
  expect(at(0.05).seen.area).toBe(0);
  expect(at(0.0004).lensInside).toBe(null);
  expect(at(0.0004).seen.area).toBeGreaterThan(50);
});
