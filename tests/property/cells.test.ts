import { expect, test } from 'vitest';
import { HIDDEN, INSIDE, OUT_OF_FRAME, SCREENED } from '../../src/coverage/state.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { isSettled, isWithin, nearestBlocker } from '../oracle/bruteCaster.ts';
import { plainImage } from '../oracle/plainCamera.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { boxSolid } from '../sight/boxSolid.ts';
import { answerOf } from './engine.ts';
import { isClear, latticeCamera, latticeScene, randomCamera, randomScene, WINDOW } from './scenes.ts';

test('rays over all triangles find every cell hidden, screened or seen as it is, with areas within their chance', () => {
  const chance = chanceFrom(42);
  let [off, spread, judged] = [0, 0, 0];
  for (let trial = 0; trial < trials(30, 1000); trial += 1) {
    const solids = randomScene(chance, chance.whole(2, 10), chance.whole(0, 3));
    const camera = randomCamera(chance);
    const z = chance.pick([0, 0.5, 1.6]);
    if (isWithin(rawTriangles(solids), camera.eye)) continue;
    const solid = rawTriangles(solids, ({ passage }) => passage === 'solid');
    const screen = rawTriangles(solids, ({ passage }) => passage === 'screen');
    const all = rawTriangles(solids);
    const { areas, cells } = answerOf({ solids, camera, z, window: WINDOW }, 'quick', 0.5);
    const wrong: string[] = [];
    let seen = 0;
    // One ray a cell of a metre, at a random place of it.
    for (let i = 0; i < 900; i += 1) {
      const target = [-15 + (i % 30) + chance.next(), -15 + Math.floor(i / 30) + chance.next(), z];
      const at = plainImage(camera, target);
      const isFramed = at !== null && Math.min(at[0], at[1], 2688 - at[0], 1520 - at[1]) >= 0;
      if (isFramed && nearestBlocker(all, camera.eye, target) === null) seen += 1;
      const cell = Math.floor(((target[1] ?? 0) + 15) * 2) * 60 + Math.floor(((target[0] ?? 0) + 15) * 2);
      const middle = [-15 + ((cell % 60) + 0.5) / 2, -15 + (Math.floor(cell / 60) + 0.5) / 2, z];
      const state = cells.state[cell];
      if (state === OUT_OF_FRAME || state === INSIDE) continue;
      judged += 1;
      const expected = nearestBlocker(solid, camera.eye, middle)
        ? HIDDEN
        : nearestBlocker(screen, camera.eye, middle)
          ? SCREENED
          : 0;
      const isSame = expected === 0 ? state !== HIDDEN && state !== SCREENED : state === expected;
      if (isSame || !isSettled(solid, camera.eye, middle, 0.002)) continue;
      if (isSettled(screen, camera.eye, middle, 0.002)) wrong.push(middle.join(' '));
    }
    expect(wrong, `seed 42, trial ${trial}`).toEqual([]);
    const share = areas.seen.value / 900;
    off += seen - areas.seen.value;
    // No more than a plain sample of as many rays would spread.
    spread += 900 * share * (1 - share);
    expect(Math.abs(seen - areas.seen.value), `seed 42, trial ${trial}`).toBeLessThan(
      5 * Math.sqrt(900 * share * (1 - share)) + 5,
    );
  }
  expect(Math.abs(off)).toBeLessThan(4 * Math.sqrt(spread));
  expect(judged).toBeGreaterThan(1000);
});

test('on equal depth the lowest index is named, by cells and by exact areas alike', () => {
  const chance = chanceFrom(43);
  let named = 0;
  for (let trial = 0; trial < trials(40, 1000); trial += 1) {
    const camera = latticeCamera(chance, 0, 0);
    const box = latticeScene(chance, 0, 0, 1)[0] ?? boxSolid('box', [0, 0, 0], [1, 1, 1]);
    const others = latticeScene(chance, 0, 0, 3);
    const solids = [...others, box, { ...box, id: 'twin' }];
    if (!isClear(solids, camera.eye)) continue;
    const { areas, cells } = answerOf({ solids, camera, z: 0, window: WINDOW }, 'exact', 0.5);
    named += cells.hider.filter((solid) => solid === 3).length;
    expect(cells.hider.includes(4), `seed 43, trial ${trial}`).toBe(false);
    expect(areas.byHider.some(({ solid }) => solid === 4)).toBe(false);
  }
  expect(named).toBeGreaterThan(100);
});

test('every centre lies within the outline of what is seen just where its cell is seen', () => {
  const chance = chanceFrom(44);
  let [judged, seenCells] = [0, 0];
  for (let trial = 0; trial < trials(30, 1000); trial += 1) {
    const solids = randomScene(chance, chance.whole(1, 10), chance.whole(0, 2));
    const camera = randomCamera(chance);
    const z = chance.pick([0, 0.5, 1.6]);
    if (isWithin(rawTriangles(solids), camera.eye)) continue;
    const { cells, found } = answerOf({ solids, camera, z, window: WINDOW }, 'quick', 0.5);
    const { rings } = found.sight.seen;
    const wrong: string[] = [];
    for (let cell = 0; cell < 3600; cell += 1) {
      const state = cells.state[cell];
      const [a, b] = [-15 + ((cell % 60) + 0.5) / 2, -15 + (Math.floor(cell / 60) + 0.5) / 2];
      let isInside = false;
      let nearest = Infinity;
      for (const ring of rings)
        for (let at = 0; at < ring.length; at += 2) {
          const next = (at + 2) % ring.length;
          const [a0 = 0, b0 = 0, a1 = 0, b1 = 0] = [ring[at], ring[at + 1], ring[next], ring[next + 1]];
          if (b0 > b !== b1 > b && a < a0 + ((b - b0) / (b1 - b0)) * (a1 - a0)) isInside = !isInside;
          const size2 = (a1 - a0) ** 2 + (b1 - b0) ** 2;
          const along = Math.min(1, Math.max(0, ((a - a0) * (a1 - a0) + (b - b0) * (b1 - b0)) / size2));
          nearest = Math.min(nearest, Math.hypot(a - a0 - along * (a1 - a0), b - b0 - along * (b1 - b0)));
        }
      if (nearest < 1e-6) continue;
      judged += 1;
      const isSeen = state !== OUT_OF_FRAME && state !== HIDDEN && state !== SCREENED && state !== INSIDE;
      if (isSeen) seenCells += 1;
      if (isSeen !== isInside) wrong.push(`${a} ${b} from ${camera.eye.join(' ')}`);
    }
    expect(wrong, `seed 44, trial ${trial}`).toEqual([]);
  }
  expect(judged - seenCells).toBeGreaterThan(1000);
  expect(seenCells).toBeGreaterThan(1000);
});
