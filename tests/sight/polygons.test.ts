import { areaPathsD, FillRule, intersectD } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { convexParts } from '../../src/sight/convexParts.ts';
import { cutPolygon, halfPlanesOf } from '../../src/sight/halfPlanes.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';

const shoelace = (ring: readonly Vec2[]): number =>
  ring.reduce((sum, [x, y], at) => {
    const [nx, ny] = ring[(at + 1) % ring.length] ?? [x, y];
    return sum + (x * ny - nx * y) / 2;
  }, 0);

/** A ring around a place, corners in the order of their bearings, convex where all are equally far. */
const ringAround = (chance: Chance, many: number, [x, y]: Vec2, least: number): Vec2[] =>
  Array.from({ length: many }, (_, at) => {
    const angle = ((at + chance.between(0, 0.7)) / many) * 2 * Math.PI;
    const far = 3 * chance.between(least, 1);
    return [x + far * Math.cos(angle), y + far * Math.sin(angle)];
  });

describe('half-planes of a polygon', () => {
  test('give each place its distance from each edge, positive inside', () => {
    const [first, ...rest] = halfPlanesOf([
      [1, 1],
      [5, 1],
      [5, 1],
      [5, 4],
    ]);
    // A corner given twice makes no edge.
    expect(rest.length).toBe(2);
    const [a, b, k] = first ?? [0, 0, 0];
    expect([a * 3 + b * 4 + k, a * 9 + b * 0.5 + k]).toEqual([3, -0.5]);
    // The slanted edge from (5, 4) to (1, 1) is 4 / 5 and 3 / 5: by hand, 2.4 from the corner (5, 1).
    const [c, d, m] = rest[1] ?? [0, 0, 0];
    expect(c * 5 + d + m).toBeCloseTo(2.4, 12);
  });
});

describe('a polygon cut by half-planes', () => {
  test('has the area that a polygon library finds', () => {
    const chance = chanceFrom(83);
    let cut = 0;
    for (let trial = 0; trial < trials(300, 10_000); trial += 1) {
      const subject = ringAround(chance, chance.whole(3, 8), [0, 0], 1);
      const knife = ringAround(chance, chance.whole(3, 6), [chance.between(-3, 3), chance.between(-3, 3)], 1);
      const left = cutPolygon(subject, halfPlanesOf(knife));
      const paths = [subject, knife].map((ring) => [ring.map(([x, y]) => ({ x, y }))]);
      const wanted = Math.abs(areaPathsD(intersectD(paths[0] ?? [], paths[1] ?? [], FillRule.NonZero, 8)));
      expect(shoelace(left), `seed 83, trial ${trial}`).toBeCloseTo(wanted, 5);
      if (left.length > 0 && wanted < shoelace(subject) - 0.1) cut += 1;
    }
    expect(cut).toBeGreaterThan(100);
  });

  test('to a line holds nothing', () => {
    const square = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ] as const;
    expect(shoelace(cutPolygon(square, [[-1, 0, 0]]))).toBe(0);
    expect(cutPolygon(square, [[-1, 0, -1]])).toEqual([]);
    expect(cutPolygon(square, [[1, 0, 0]])).toEqual(square);
  });
});

describe('convex parts of a ring', () => {
  test('are convex, counter-clockwise, lie side by side and make it up', () => {
    const chance = chanceFrom(84);
    let dented = 0;
    for (let trial = 0; trial < trials(200, 5000); trial += 1) {
      const ring = ringAround(
        chance,
        chance.whole(4, 9),
        [chance.between(-9, 9), chance.between(-9, 9)],
        0.2,
      );
      const parts = convexParts(ring);
      if (parts.length > 1) dented += 1;
      const name = `seed 84, trial ${trial}`;
      expect(
        parts.reduce((sum, part) => sum + shoelace(part), 0),
        `${name}`,
      ).toBeCloseTo(shoelace(ring), 9);
      for (const part of parts) {
        expect(shoelace(part), `${name}`).toBeGreaterThan(0);
        part.forEach((corner, at) => {
          const [next, after] = [
            part[(at + 1) % part.length] ?? corner,
            part[(at + 2) % part.length] ?? corner,
          ];
          expect(shoelace([corner, next, after]), `${name}`).toBeGreaterThanOrEqual(-1e-12);
        });
      }
    }
    expect(dented).toBeGreaterThan(50);
  });

  test('of a convex one are itself, also with a corner along an edge', () => {
    const ring = [
      [0, 0],
      [2, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ] as const;
    expect(convexParts(ring)).toEqual([ring]);
  });
});
