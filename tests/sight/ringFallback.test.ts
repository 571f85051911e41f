import { expect, test } from 'vitest';
import { areaShadows } from '../../src/sight/areaShadows.ts';
import { ringsByUnion } from '../../src/sight/ringFallback.ts';
import { ringArea } from '../../src/sight/rings.ts';

const window = [
  [-5, -5],
  [5, -5],
  [5, 5],
  [-5, 5],
] as const;
const triangle = (x: number, y: number, size: number): number[] => [x, y, x + size, y, x, y + size];
const areaLeft = (...triangles: number[][]): number =>
  ringsByUnion(window, areaShadows(Float64Array.from(triangles.flat()), [0, 0], 0)).reduce(
    (sum, ring) => sum + ringArea(ring),
    0,
  );

test('what a library leaves of a window is the window less what lies in it of each shadow, once', () => {
  expect(areaLeft()).toBeCloseTo(100, 6);
  expect(areaLeft(triangle(0, 0, 2))).toBeCloseTo(98, 6);
  // A second one over half of the first, one half out of the window, and one wholly out of it.
  expect(areaLeft(triangle(0, 0, 2), triangle(0, 0, 1))).toBeCloseTo(98, 6);
  expect(areaLeft(triangle(0, 0, 2), triangle(4, -3, 2))).toBeCloseTo(98 - 1.5, 6);
  expect(areaLeft(triangle(0, 0, 2), triangle(9, 9, 2))).toBeCloseTo(98, 6);
});
