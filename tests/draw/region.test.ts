import { describe, expect, test } from 'vitest';
import { partsWithin, withinRings } from '../../src/draw/region.ts';
import { chanceFrom } from '../house/seeded.ts';

const square = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10);
const hole = Float64Array.of(4, 4, 4, 6, 6, 6, 6, 4);

describe('rings', () => {
  test('a point in a hole is not within', () => {
    expect(withinRings([square, hole], 1, 1)).toBe(true);
    expect(withinRings([square, hole], 5, 5)).toBe(false);
    expect(withinRings([square, hole], 11, 5)).toBe(false);
    expect(withinRings([], 0, 0)).toBe(false);
  });

  test('a segment through the hole keeps the parts on both sides', () => {
    const parts = partsWithin([square, hole], [-5, 5], [15, 5]);
    expect(parts.map(([a, b]) => [a[0], b[0]])).toEqual([
      [0, 4],
      [6, 10],
    ]);
  });

  test('points along random segments lie in a part exactly where they lie within (seed 5)', () => {
    const chance = chanceFrom(5);
    for (let i = 0; i < 300; i += 1) {
      const at = () => [chance.between(-3, 13), chance.between(-3, 13)] as const;
      const [from, to] = [at(), at()];
      const parts = partsWithin([square, hole], from, to);
      for (let t = 0.013; t < 1; t += 0.07) {
        const point = [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t] as const;
        const inPart = parts.some(
          ([a, b]) =>
            (point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1]) >= 0 &&
            (point[0] - b[0]) * (a[0] - b[0]) + (point[1] - b[1]) * (a[1] - b[1]) >= 0,
        );
        expect(inPart).toBe(withinRings([square, hole], ...point));
      }
    }
  });
});
