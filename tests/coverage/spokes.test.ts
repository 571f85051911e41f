import { expect, test } from 'vitest';
import { areasWhere } from '../../src/coverage/areaWhere.ts';
import { curveSources } from '../../src/coverage/curveSources.ts';
import { footingOf } from '../../src/sight/footing.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { wideCamera } from '../sight/wideCamera.ts';

const SQUARE = Float64Array.of(-7, -5, 6, -5, 6, 8, -7, -5, 6, 8, -7, 8);

test('a wedge whose point lies straight below the lens keeps its area', () => {
  // As a density that hangs on the bearing alone does: 1 within 20° of north, below elsewhere.
  const footing = footingOf([0, 0, 3.4], horizontalPlane(0));
  const half = (20 * Math.PI) / 180;
  const [found] = areasWhere(
    SQUARE,
    (p, q, values, at) => {
      values[at] = Math.cos(Math.atan2(p, q)) / Math.cos(half) - 1;
    },
    1,
    [[0]],
    curveSources(wideCamera, footing),
  );
  expect(Math.abs((found?.value ?? 0) - 64 * Math.tan(half))).toBeLessThan(5e-5);
});

test('curves come from the lens, from straight below it, and behind a bent lens from where its axis comes out', () => {
  const footing = footingOf([2, 1, 3], horizontalPlane(1));
  const looking = { ...wideCamera, eye: [2, 1, 3] as const, pan: 90, tilt: -45 };
  const places = (k: number) =>
    curveSources({ ...looking, k }, footing).map(({ p, q }) => [
      Math.round(p * 1e9) / 1e9 + 0,
      Math.round(q * 1e9) / 1e9 + 0,
    ]);
  expect(places(1)).toEqual([
    [0, 0],
    [0, 0],
  ]);
  // Up and to the east: behind, the axis comes down 2 m to the west of a lens 2 m up.
  expect(places(0)).toEqual([
    [0, 0],
    [0, 0],
    [-2, 0],
  ]);
});
