import { expect, test } from 'vitest';
import { trapezoids } from '../../src/sight/trapezoids.ts';
import { trianglesArea, trianglesOf } from '../../src/sight/triangulate.ts';

/** 2 × 2 with a hole of 1 × 1, the hole touching nothing. */
const square = Float64Array.of(0, 0, 2, 0, 2, 2, 0, 2);
const hole = Float64Array.of(0.5, 0.5, 0.5, 1.5, 1.5, 1.5, 1.5, 0.5);

test('a ring with a hole has the area between them', () => {
  expect(trianglesArea(trianglesOf([square, hole]))).toBeCloseTo(3, 12);
});

test('a ring that runs there and back along one line is nothing, also where it touches another', () => {
  // Seen behind a turned box: the library made 1.50 of 0.98 m² of these two.
  const outline = [5.83503, 3.54794, 5.84947, 3.66346, 6.13421, 5.94143, 4.71759, 4.56933, 5.4647, 4.79177];
  const ring = Float64Array.of(...outline, 5.80831, 3.63768);
  const spike = Float64Array.of(4.71759, 4.56933, 5.1228, 3.20835, 5.81847, 3.41548, 5.1228, 3.20835);
  // By the surveyor's formula, corner by corner.
  expect(trianglesArea(trianglesOf([ring, spike]))).toBeCloseTo(0.98425, 4);
});

test('rings that touch at corners and along edges have their area, each place once', () => {
  // A hole whose corner touches the outer ring, one that touches that hole, and an island in it.
  const rings = [
    square,
    Float64Array.of(0, 0, 0.5, 1, 1, 0.5),
    Float64Array.of(1, 0.5, 0.5, 1, 1.5, 1.5),
    Float64Array.of(1, 0.9, 1.2, 1.2, 0.9, 1),
  ];
  const triangles = trianglesOf(rings);
  // 4 less two holes of 0.375, and the island by the surveyor's formula.
  const island = 0.5 * Math.abs(0.2 * 0.1 - -0.1 * 0.3);
  expect(trianglesArea(triangles)).toBeCloseTo(4 - 2 * 0.375 + island, 9);
});

test('by strips the same', () => {
  expect(trianglesArea(trapezoids([square, hole]))).toBeCloseTo(3, 12);
});
