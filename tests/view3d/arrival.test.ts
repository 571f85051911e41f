import { describe, expect, test } from 'vitest';
import { GROUND } from '../../src/view3d/ground/terrainFaces.ts';
import { Arrival } from '../../src/view3d/navigate/arrival.ts';
import { sheetOf } from '../../src/view3d/sheet.ts';
import { box } from './shapes.ts';

/** About 14 m from side to side, seen from above. */
const looking = {
  sheet: sheetOf({ pivot: [0, 0, 0], bearing: 0, elevation: 90, distance: 60 }, 400, 400),
  width: 400,
  height: 400,
};
const near = box('near', [-2, -2, 0], [2, 2, 3]);
const far = box('far', [18, -2, 0], [22, 2, 3]);
const ground = box(GROUND, [-90, -90, -1], [90, 90, 0]);

/** What each of some pictures in turn says. */
const told = (...shown: readonly Parameters<Arrival['outOfView']>[0][]) => {
  const arrival = new Arrival();
  return shown.map((one) => arrival.outOfView(one, looking));
};
const at = (solids: Parameters<Arrival['outOfView']>[0]['solids'], resting = true, plan = 'a') => ({
  plan,
  solids,
  resting,
});

describe('what comes onto an empty board', () => {
  test('is shown whole, once, where a part of it is out of view', () => {
    expect(told(at([]), at([near, far]), at([near, far]))).toEqual([false, true, false]);
  });

  test('moves nothing where all of it is in view', () => {
    expect(told(at([]), at([near]))).toEqual([false, false]);
  });

  test('moves nothing while one draws, nor later for the same', () => {
    expect(told(at([], false), at([far], false), at([far]))).toEqual([false, false, false]);
  });

  test('is not meant where something stood there already, or the plan is another', () => {
    expect(told(at([near]), at([near, far]))).toEqual([false, false]);
    expect(told(at([]), at([far], true, 'b'))).toEqual([false, false]);
  });

  test('counts no ground: uneven ground alone is an empty board, and need not be in view', () => {
    expect(told(at([ground]), at([ground, near]))).toEqual([false, false]);
    expect(told(at([ground]), at([ground, far]))).toEqual([false, true]);
  });
});
