import { expect, test } from 'vitest';
import type { Solid } from '../../src/model/solid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { boxSolid } from './boxSolid.ts';
import { wideCamera } from './wideCamera.ts';

const WINDOW = [
  [-20, -20],
  [20, -20],
  [20, 20],
  [-20, 20],
] as const;
/** Looks north over a wall 5 m away. */
const CAMERA = { ...wideCamera, eye: [0, 0, 3] as const, pan: 0, tilt: 20 };
const WALL = boxSolid('wall', [0, 5, 0], [8, 0.2, 2]);

const seen = (solids: readonly Solid[]) => {
  const { solids: shadows, screens, sight } = sightOf(CAMERA, horizontalPlane(0), WINDOW, facetsOf(solids));
  const throwers = new Set(shadows.solid.subarray(0, shadows.count));
  return { throwers, screens: screens.count, area: sight.seen.area };
};

test('what a wall hides wholly throws no shadow, and nothing else is seen for it', () => {
  const { throwers, area } = seen([WALL, boxSolid('behind', [1, 7, 0], [1, 1, 1])]);
  expect([...throwers]).toEqual([0]);
  expect(area).toBe(seen([WALL]).area);
});

test('what looks over a wall, stands beside it or before it throws its shadow', () => {
  const over = seen([WALL, boxSolid('over', [1, 7, 0], [1, 1, 2])]);
  const beside = seen([WALL, boxSolid('beside', [5.4, 6.5, 0], [1, 1, 1])]);
  const before = seen([WALL, boxSolid('before', [1, 3, 0], [1, 1, 1])]);
  for (const { throwers } of [over, beside, before]) expect(throwers).toEqual(new Set([0, 1]));
  expect(over.area).toBeLessThan(seen([WALL]).area - 1);
});

test('a screen behind a screen keeps its shadow, since the first may not close up', () => {
  const screen = (id: string, y: number, height: number) =>
    boxSolid(id, [0, y, 0], [8, 0.2, height], 0, 'screen');
  const one = seen([screen('one', 5, 2)]).screens;
  expect(one).toBeGreaterThan(0);
  expect(
    seen([screen('one', 5, 2), boxSolid('two', [1, 7, 0], [1, 1, 1], 0, 'screen')]).screens,
  ).toBeGreaterThan(one);
});
