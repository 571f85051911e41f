import { expect, test } from 'vitest';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { COVERED, INSIDE, TOO_COARSE } from '../../src/coverage/state.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { isWithin } from '../oracle/bruteCaster.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { answerOf } from './engine.ts';
import { bentLens, randomCamera, randomScene, WINDOW } from './scenes.ts';

/** Solids with every corner moved; turned inside out again where the move is a mirror. */
const moved = (
  solids: readonly Solid[],
  move: (x: number, y: number) => readonly [number, number],
  isMirror: boolean,
): Solid[] =>
  solids.map((solid) => ({
    ...solid,
    positions: solid.positions.map((n, at) => {
      const corner = at - (at % 3);
      const [x, y] = move(solid.positions[corner] ?? 0, solid.positions[corner + 1] ?? 0);
      return [x, y, n][at % 3] ?? n;
    }),
    triangles: isMirror
      ? solid.triangles.map((_, at) => solid.triangles[at + (at % 3 === 1 ? 1 : at % 3 === 2 ? -1 : 0)] ?? 0)
      : solid.triangles,
  }));

interface Trial {
  readonly solids: readonly Solid[];
  readonly camera: Camera;
  readonly z: number;
}

/** Random trials with every lens law and the lens in the open. */
function* randomTrials(seed: number, many: number): Generator<Trial> {
  const chance = chanceFrom(seed);
  for (let trial = 0; trial < many; trial += 1) {
    const solids = randomScene(chance, chance.whole(1, 10), chance.whole(0, 2));
    const k = chance.pick([1, 1, 0.5, 0, -0.5]);
    const camera = { ...randomCamera(chance), ...(k === 1 ? {} : bentLens(chance, k)) };
    const z = chance.pick([0, 0.5, 1.6, 1.8]);
    if (!isWithin(rawTriangles(solids), camera.eye)) yield { solids, camera, z };
  }
}

test('areas stay the same when all is turned by a quarter, mirrored, or moved away', () => {
  for (const { solids, camera, z } of randomTrials(61, trials(25, 1000))) {
    const [x, y, up] = camera.eye;
    const here = answerOf({ solids, camera, z, window: WINDOW }, 'exact').areas;
    const same = (
      what: string,
      move: (a: number, b: number) => readonly [number, number],
      change: Partial<Camera>,
      isMirror: boolean,
      off: readonly [number, number],
    ) => {
      const window = { left: off[0] - 15, right: off[0] + 15, bottom: off[1] - 15, top: off[1] + 15 };
      const there = answerOf(
        {
          solids: moved(solids, move, isMirror),
          camera: { ...camera, eye: [...move(x, y), up], ...change },
          z,
          window,
        },
        'exact',
      ).areas;
      const pairs = [
        [here.seen, there.seen],
        [here.insideFrame, there.insideFrame],
        [here.byState.hidden, there.byState.hidden],
        [here.byState.screened, there.byState.screened],
        ...here.byBand.map((band, at) => [band, there.byBand[at] ?? band] as const),
      ] as const;
      for (const [one, two] of pairs)
        expect(Math.abs(one.value - two.value), `${what}, pan ${camera.pan}, k ${camera.k}`).toBeLessThan(
          5e-6 + (one.bound + two.bound) / 2,
        );
    };
    // Clockwise seen from above: north becomes east, so that every bearing grows by 90°.
    same('turned', (a, b) => [b, -a], { pan: camera.pan + 90 }, false, [0, 0]);
    same('mirrored', (a, b) => [-a, b], { pan: -camera.pan, roll: -camera.roll }, true, [0, 0]);
    same('moved', (a, b) => [a + 512, b - 1024], {}, false, [512, -1024]);
  }
});

test('all states together have the area of the window, and seen is covered or too coarse', () => {
  for (const { solids, camera, z } of randomTrials(62, trials(60, 2000))) {
    const { byState, byBand, seen } = answerOf({ solids, camera, z, window: WINDOW }, 'exact').areas;
    const total = Object.values(byState).reduce((sum, { value }) => sum + value, 0);
    expect(total).toBeCloseTo(900, 6);
    const bands = byBand.reduce((sum, { value }) => sum + value, 0);
    expect(bands).toBeCloseTo(byState.covered.value, 6);
    expect(byState.covered.value + byState['too coarse'].value).toBeGreaterThan(seen.value - 1e-6);
  }
});

test('one more solid never uncovers a cell, and leaves what it does not hide as it was', () => {
  const open = (state: number | undefined) => state === COVERED || state === TOO_COARSE;
  let taken = 0;
  for (const { solids, camera, z } of randomTrials(63, trials(60, 2000))) {
    const all = answerOf({ solids, camera, z, window: WINDOW }, 'quick', 0.25).cells;
    const fewer = answerOf({ solids: solids.slice(0, -1), camera, z, window: WINDOW }, 'quick', 0.25).cells;
    const last = solids.length - 1;
    let wrong = 0;
    all.state.forEach((state, cell) => {
      const before = fewer.state[cell];
      if (open(state) && !open(before)) wrong += 1;
      if (open(state) && all.band[cell] !== fewer.band[cell]) wrong += 1;
      if (open(before) && !open(state)) {
        taken += 1;
        if (state !== INSIDE && all.hider[cell] !== last) wrong += 1;
      }
    });
    expect(wrong, `pan ${camera.pan}`).toBe(0);
  }
  expect(taken).toBeGreaterThan(500);
});

test('a longer lens never lowers the density inside both frames', () => {
  let judged = 0;
  for (const { camera, z } of randomTrials(64, trials(60, 2000))) {
    const short = answerOf({ solids: [], camera, z, window: WINDOW }, 'quick', 0.5).cells.density;
    const long = { ...camera, focalLength: camera.focalLength * 1.3 };
    const longer = answerOf({ solids: [], camera: long, z, window: WINDOW }, 'quick', 0.5).cells.density;
    let wrong = 0;
    short.forEach((density, cell) => {
      const other = longer[cell] ?? 0;
      if (density === 0 || other === 0) return;
      judged += 1;
      if (other < density * (1.3 - 1e-5)) wrong += 1;
    });
    expect(wrong).toBe(0);
  }
  expect(judged).toBeGreaterThan(1000);
});
