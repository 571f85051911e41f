/*
 * Source of the figures: see shapes.ts. What a flat face takes of all directions, or of those weighted by their cosine with a normal, is
 * summed over the triangles of what the engine says is seen of a plane behind it: solid angle of a triangle by van Oosterom and
 * Strackee (1983), cosine-weighted by Lambert's sum over its edges (1760); both from memory. No ray is cast, and no grid is laid.
 */
import { expect, test } from 'vitest';
import type { Plane } from '../../../src/base/plane.ts';
import { cross, dot, scale, subtract, type Vec2, type Vec3 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { sightOf } from '../../../src/sight/sightOf.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';
import { levelDisc, levelRectangle, parallel, solidShare, upright, uprightRectangle } from './shapes.ts';

const UP: Vec3 = [0, 0, 1];
const unit = (v: Vec3): Vec3 => scale(v, 1 / Math.sqrt(dot(v, v)));

/** Share of all directions from the origin. */
function shareOfAll(a: Vec3, b: Vec3, c: Vec3): number {
  const [p, q, r] = [unit(a), unit(b), unit(c)];
  const halfAngle = Math.atan2(Math.abs(dot(p, cross(q, r))), 1 + dot(p, q) + dot(q, r) + dot(r, p));
  return (2 * halfAngle) / (4 * Math.PI);
}

/** Share of the directions from the origin weighted by their cosine with up, of a triangle above it. */
function shareByCosine(a: Vec3, b: Vec3, c: Vec3): number {
  let sum = 0;
  for (const [from, to] of [
    [a, b],
    [b, c],
    [c, a],
  ] as const) {
    const side = cross(from, to);
    const size = Math.sqrt(dot(side, side));
    if (size > 0) sum += Math.atan2(size, dot(from, to)) * (dot(side, UP) / size);
  }
  return Math.abs(sum) / (2 * Math.PI);
}

const LEVEL: Plane = { origin: [0, 0, 1.5], u: [1, 0, 0], v: [0, 1, 0], normal: UP };
const WALL: Plane = { origin: [0, 1.5, 0], u: [1, 0, 0], v: [0, 0, 1], normal: [0, -1, 0] };

/** What a solid takes of what a lens at the origin sees of a rectangle of a plane behind it. */
function taken(
  solid: Solid,
  plane: Plane,
  [low, high]: readonly [Vec2, Vec2],
  of: typeof shareOfAll,
): number {
  const camera = cameraWith({
    eye: [0, 0, 0],
    tilt: plane === LEVEL ? -90 : 0,
    focalLength: 1,
    sensor: { width: 60, height: 60 },
    frame: { width: 60, height: 60 },
    range: 1000,
  });
  const window = [low, [high[0], low[1]], high, [low[0], high[1]]] as const;
  const sum = (solids: readonly Solid[]): number => {
    const { triangles } = sightOf(camera, plane, window, facetsOf(solids)).sight.seen;
    let total = 0;
    for (let at = 0; at < triangles.length; at += 6) {
      const corner = (k: number): Vec3 => {
        const [a, b] = [triangles[at + 2 * k] ?? 0, triangles[at + 2 * k + 1] ?? 0];
        return subtract(scale(plane.u, a), subtract(scale(plane.v, -b), plane.origin));
      };
      total += of(corner(0), corner(1), corner(2));
    }
    return total;
  };
  return sum([]) - sum([solid]);
}

const ALL_ROUND = [
  [-14, -13],
  [15, 14],
] as const;
const UPPER = [
  [-14, 0],
  [15, 13],
] as const;

test.each([
  ['a rectangle 1 × 2 at 0.5', levelRectangle([0, 0], [1, 2], 0.5), solidShare(1, 2, 0.5), shareOfAll],
  [
    'a parallel rectangle 3 × 2 at 0.5',
    levelRectangle([0, 0], [3, 2], 0.5),
    parallel(3, 2, 0.5),
    shareByCosine,
  ],
  ['a parallel rectangle 1 × 1 at 1', levelRectangle([0, 0], [1, 1], 1), parallel(1, 1, 1), shareByCosine],
  [
    'a rectangle 2 × 2 straight above',
    levelRectangle([-1, -1], [1, 1], 1),
    4 * parallel(1, 1, 1),
    shareByCosine,
  ],
] as const)('%s takes the share of the closed form from the exact region', (_, solid, figure, of) => {
  expect(Math.abs(taken(solid, LEVEL, ALL_ROUND, of) - figure)).toBeLessThan(1e-9);
});

test('a wall takes the share of the closed form from the exact region', () => {
  const solid = uprightRectangle([0, 0], [2, 1], 0.5);
  expect(Math.abs(taken(solid, WALL, UPPER, shareByCosine) - upright(1, 2, 0.5))).toBeLessThan(1e-9);
  expect(Math.abs(taken(solid, WALL, UPPER, shareOfAll) - solidShare(2, 1, 0.5))).toBeLessThan(1e-9);
});

test('discs take the share of the closed form, as far as their corners allow', () => {
  expect(Math.abs(taken(levelDisc(0.5, 1, 1), LEVEL, ALL_ROUND, shareByCosine) - 0.437983)).toBeLessThan(
    3e-6,
  );
  expect(Math.abs(taken(levelDisc(0, 1, 1), LEVEL, ALL_ROUND, shareByCosine) - 0.5)).toBeLessThan(3e-6);
});
