import { expect, test } from 'vitest';
import { areaShadows } from '../../src/sight/areaShadows.ts';
import { halfPlanesOf } from '../../src/sight/halfPlanes.ts';
import { uncovered } from '../../src/sight/region.ts';
import { BOX, STRIDE, type Shadows } from '../../src/sight/shadows.ts';
import { boundsOf } from '../../src/sight/sightOf.ts';
import { trianglesArea } from '../../src/sight/triangulate.ts';

/** The cut of a turned pane by a slope: a micrometre of one of its sides is a corner of its own, in line with the side. */
const pane = Float64Array.of(
  2.957939801413999,
  6.153873702669384,
  2.957938736909281,
  6.153874333428943,
  1.6580289345548347,
  6.92411903469133,
  2.957939801413999,
  6.153873702669384,
  1.6580289345548347,
  6.92411903469133,
  0.9455489398422978,
  5.721698391093073,
  2.957939801413999,
  6.153873702669384,
  0.9455489398422978,
  5.721698391093073,
  0.9455500043470155,
  5.721697760333514,
  2.957939801413999,
  6.153873702669384,
  0.9455500043470155,
  5.721697760333514,
  2.245459806701462,
  4.951453059071127,
);

test.each([
  [0, 0],
  [6, 1],
  [2, 30],
])('a triangle without width takes no edge from its neighbour, seen from %d, %d', (x, y) => {
  const window = [
    [-5 - x, -5 - y],
    [10 - x, -5 - y],
    [10 - x, 15 - y],
    [-5 - x, 15 - y],
  ] as const;
  const shadows = areaShadows(pane, [x, y], 0);
  const { area } = uncovered(shadows, boundsOf(window, [], halfPlanesOf(window)));
  expect(300 - area).toBeCloseTo(trianglesArea(pane), 5);
});

test('a shadow whose two sides lie on one line covers nothing of a neighbour along it', () => {
  // By hand: half-planes and box of a square of 1 m², and of a stretch of its upper side without width.
  const square = {
    sides: [
      [0, 1, 0],
      [-1, 0, 1],
      [0, -1, 1],
      [1, 0, 0],
    ],
    box: [0, 0, 1, 1],
  };
  const sliver = {
    sides: [
      [0, 1, -1],
      [-1, 0, 0.8],
      [0, -1, 1],
      [1, 0, -0.2],
    ],
    box: [0.2, 1, 0.8, 1],
  };
  const window = [
    [-5, -5],
    [5, -5],
    [5, 5],
    [-5, 5],
  ] as const;
  for (const both of [
    [sliver, square],
    [square, sliver],
  ]) {
    const numbers = new Float64Array(2 * STRIDE);
    both.forEach(({ sides, box }, at) => {
      numbers.set(sides.flat(), at * STRIDE);
      numbers.set(box, at * STRIDE + BOX);
    });
    const shadows: Shadows = {
      count: 2,
      numbers,
      sides: Uint8Array.of(4, 4),
      outline: Uint8Array.of(15, 15),
      solid: Int32Array.of(0, 1),
      facet: Int32Array.of(-1, -1),
      dark: null,
    };
    expect(uncovered(shadows, boundsOf(window, [], halfPlanesOf(window))).area).toBeCloseTo(99, 9);
  }
});
