import { expect, test } from 'vitest';
import { HIT_TOLERANCE } from '../../src/base/tolerance.ts';
import type { Vec3 } from '../../src/base/vector.ts';
import { Scratch } from '../../src/coverage/cells.ts';
import { pointState } from '../../src/coverage/point.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { STATES } from '../../src/coverage/state.ts';
import { unevenCells, unevenLensInside } from '../../src/coverage/unevenCells.ts';
import { unevenGround } from '../../src/coverage/unevenGround.ts';
import { unevenInside } from '../../src/coverage/unevenInside.ts';
import { terrainOfGrid } from '../../src/model/terrainGrid.ts';
import type { Solid } from '../../src/model/solid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { Segments } from '../../src/sight/segment.ts';
import { treeOf } from '../../src/sight/tree.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { nearestBlocker } from '../oracle/bruteCaster.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { cameraWith } from '../optics/sampleCamera.ts';
import { boxSolid } from '../sight/boxSolid.ts';
import { cameraOver, cameraTouching, cellsOver, hills, thingsOn } from './unevenScene.ts';

const BANDS = [25, 125, 250].map((density) => ({ key: `${density}`, name: `${density}`, density }));
const CAPS = [{ above: 30, side: 90, band: 1 }];
const BOARD = { left: -22, bottom: -17, right: 23, top: 19 };

/** Whether something is met within the millimetre before a target, and nothing earlier. */
function meetsJustBefore(solids: readonly Solid[], eye: Vec3, target: Vec3): boolean {
  const triangles = rawTriangles(solids, ({ passage }) => passage === 'solid');
  const far = Math.hypot(target[0] - eye[0], target[1] - eye[1], target[2] - eye[2]);
  const met = nearestBlocker(triangles, eye, target, 1e-7);
  return met !== null && met.at > far - HIT_TOLERANCE;
}

test('every cell over hills has the state, band and hider that rays give it', () => {
  const chance = chanceFrom(77);
  const wrong: string[] = [];
  const counts = new Map<string, number>();
  for (let trial = 0; trial < trials(12, 400); trial += 1) {
    const terrain = hills(chance, BOARD, chance.between(0.5, 14));
    const things = thingsOn(terrain, chance, BOARD, chance.whole(0, 9));
    const solids = chance.next() < 0.5 ? [terrain.solid, ...things] : [...things, terrain.solid];
    const facets = facetsOf(solids);
    const segments = new Segments(facets, treeOf(facets));
    const grid = cellsOver(BOARD, chance.pick([0.35, 0.5, 1]));
    const ground = unevenGround(terrain, chance.pick([0, 0, 0.4, 1.6]), grid);
    const bare = unevenInside(solids, ground);
    const free = cameraOver(terrain, chance, BOARD);
    const [box] = things;
    const camera = box && trial % 3 === 0 ? cameraTouching(terrain, chance, box, free) : free;
    const rule = new BandRule(BANDS, CAPS, camera.range);
    const cells = unevenCells(camera, ground, facets, bare, rule, new Scratch());
    const inside = unevenLensInside(camera.eye, ground, facets);
    for (let cell = 0; cell < cells.state.length; cell += 1) {
      const point = [
        grid.left + ((cell % grid.columns) + 0.5) * grid.cell,
        grid.bottom + (Math.floor(cell / grid.columns) + 0.5) * grid.cell,
        ground.targets[cell] ?? 0,
      ] as const;
      const judged = pointState(camera, point, things, segments, rule, inside);
      const state = STATES[cells.state[cell] ?? -1] ?? '?';
      counts.set(state, (counts.get(state) ?? 0) + 1);
      const hider = cells.hider[cell] ?? -1;
      // Rays leave out what they meet within a millimetre of the target; cells do not.
      if (state === 'hidden' && judged.hider === null && meetsJustBefore(solids, camera.eye, point)) continue;
      if (hider >= 0 && solids[hider] === terrain.solid)
        counts.set('by ground', (counts.get('by ground') ?? 0) + 1);
      if (state !== judged.state || cells.band[cell] !== judged.band || hider !== (judged.hider ?? -1))
        wrong.push(
          `trial ${trial}, ${point.join(' ')}: ${state} ${cells.band[cell]} ${hider}, by rays ${judged.state} ${judged.band} ${judged.hider}`,
        );
    }
  }
  expect(wrong, 'seed 77').toEqual([]);
  for (const state of [...STATES.filter((one) => one !== 'too dark'), 'by ground'])
    expect(counts.get(state) ?? 0, `${state} by seed 77`).toBeGreaterThan(100);
});

test('of a ridge and a box behind it the ridge hides, of a box before it the box', () => {
  const heights = Array.from({ length: 26 }, (_, at) => (at === 10 ? 3 : 0));
  const board = { left: -5, bottom: 0, right: 5, top: 26 };
  const { terrain } = terrainOfGrid(
    { left: -5, bottom: -0.5, cell: 1, columns: 1, rows: 26, heights },
    board,
  );
  const ground = unevenGround(terrain, 0, cellsOver(board, 0.5));
  const camera = cameraWith({ eye: [0, 0, 2], tilt: 10 });
  const hiderAt20 = (y: number) => {
    const facets = facetsOf([boxSolid('box', [0, y, -1], [8, 0.5, 3]), terrain.solid]);
    const bare = unevenInside(facets.solids, ground);
    const { hider } = unevenCells(camera, ground, facets, bare, new BandRule(BANDS, [], 60), new Scratch());
    return facets.solids[hider[40 * 20 + 10] ?? -1]?.id;
  };
  expect(hiderAt20(15)).toBe('ground');
  expect(hiderAt20(5)).toBe('box');
});
