import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { cellsOf, Scratch } from '../../src/coverage/cells.ts';
import { areasOf } from '../../src/coverage/areas.ts';
import { surfaceGround } from '../../src/assess/ground.ts';
import { patchSurface } from '../../src/model/surface.ts';
import { COVERED, HIDDEN, OUT_OF_FRAME } from '../../src/coverage/state.ts';
import { GROUND } from '../../src/model/terrainSolid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { touchedSolids } from '../../src/sight/lensInside.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { Segments } from '../../src/sight/segment.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { treeOf } from '../../src/sight/tree.ts';
import { cameraWith } from '../optics/sampleCamera.ts';
import { boxSolid } from './boxSolid.ts';

/** A house 10 × 8 m and 5 m high whose south wall lies in y = −4. */
const facets = facetsOf([boxSolid('house', [0, 0, 0], [10, 8, 5])]);
const segments = new Segments(facets, treeOf(facets));
const grid = { plane: horizontalPlane(1.6), left: -20, bottom: -20, cell: 0.25, columns: 160, rows: 160 };
const WINDOW = [
  [-20, -20],
  [20, -20],
  [20, 20],
  [-20, 20],
] as const;

/** Cells south and north of the wall's plane that a camera in it, aimed along the wall, finds hidden or not. */
function alongTheWall(eye: Vec3, k: number) {
  const camera = cameraWith({ eye, pan: 270, tilt: 10, k, focalLength: 2.8, range: 100 });
  const found = sightOf(camera, grid.plane, WINDOW, facets);
  const bare = new Uint8Array(160 * 160).fill(OUT_OF_FRAME);
  const rule = new BandRule([{ key: 'any', name: 'any', density: 1e-9 }], [], 100);
  const cells = cellsOf(camera, found, grid, bare, rule, new Scratch());
  let [freeBehind, hiddenBefore, behind, before] = [0, 0, 0, 0];
  cells.state.forEach((state, cell) => {
    if (state === OUT_OF_FRAME) return;
    const x = -20 + ((cell % 160) + 0.5) * 0.25;
    const y = -20 + (Math.floor(cell / 160) + 0.5) * 0.25;
    // What lies inside the house has a state of its own, which goes before being hidden.
    if (Math.abs(x) < 5 && Math.abs(y) < 4) return;
    const hidden = state === HIDDEN;
    expect(segments.firstHit(eye, [x, y, 1.6], 'solid') !== null, `${x} ${y}`).toBe(hidden);
    // By hand: from a place in the wall every way to the north goes through the house.
    if (y > -4) [behind, freeBehind] = [behind + 1, freeBehind + (hidden ? 0 : 1)];
    else [before, hiddenBefore] = [before + 1, hiddenBefore + (hidden ? 1 : 0)];
  });
  return { behind, freeBehind, before, hiddenBefore };
}

describe('a lens that touches a wall', () => {
  test.each([
    ['in its plane', -4],
    ['half a millimetre off it', -4.0005],
    ['half a millimetre within it', -3.9995],
  ])('%s sees along it, and nothing through the building', (_, y) => {
    for (const k of [1, 0.5]) {
      const { behind, freeBehind, before, hiddenBefore } = alongTheWall([2, y, 3], k);
      expect(behind).toBeGreaterThan(1000);
      expect(before).toBeGreaterThan(1000);
      expect([freeBehind, hiddenBefore]).toEqual([0, 0]);
    }
  });

  test('the exact area of what it sees is that of its cells: the half of the frame before the wall', () => {
    const outline = WINDOW;
    const board = patchSurface({ id: 'p', name: 'P', outline, base: 1.6, pitch: 0, rises: 0 });
    const solids = facets.solids;
    const ground = surfaceGround({ solids, ground: 0 }, board, 0.1);
    for (const k of [1, 0.5]) {
      const camera = cameraWith({ eye: [2, -4, 3], pan: 270, tilt: 10, k, focalLength: 2.8, range: 100 });
      const found = sightOf(camera, ground.plane, ground.window, facets);
      const rule = new BandRule([{ key: 'any', name: 'any', density: 1e-9 }], [], 100);
      const cells = cellsOf(camera, found, ground.grid, ground.bare, rule, new Scratch());
      const { covered } = areasOf(camera, cells, found, ground.within, rule, solids, 'exact').byState;
      const count = cells.state.reduce((sum, state) => sum + (state === COVERED ? 0.01 : 0), 0);
      expect(count).toBeGreaterThan(20);
      expect(Math.abs(covered.value - count)).toBeLessThan(0.01 * count);
    }
  });
});

test('uneven ground that a lens touches is not among the solids whose back faces hide too; any other solid is', () => {
  const box = boxSolid('bank', [0, 0, 0], [10, 8, 5]);
  const eye = [1, 2, 5.0005] as const;
  expect([...(touchedSolids(eye, facetsOf([box])) ?? [])]).toEqual([1]);
  expect(touchedSolids(eye, facetsOf([{ ...box, id: GROUND }]))).toBeNull();
});
