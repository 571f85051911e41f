import { expect, test } from 'vitest';
import { areaShadows } from '../../src/sight/areaShadows.ts';
import { halfPlanesOf } from '../../src/sight/halfPlanes.ts';
import { uncovered } from '../../src/sight/region.ts';
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
