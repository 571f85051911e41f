import { describe, expect, test } from 'vitest';
import { areasWhere } from '../../src/coverage/areaWhere.ts';
import type { Conditions } from '../../src/coverage/curve.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

const SQUARE = Float64Array.of(-10, -10, 10, -10, 10, 10, -10, -10, 10, 10, -10, 10);

const areaWhere = (
  triangles: Float64Array,
  of: (p: number, q: number, v: Float64Array) => void,
  count: number,
  delta: number,
) => {
  const room = new Float64Array(count);
  const conditions: Conditions = (p, q, values, at) => {
    of(p, q, room);
    values.set(room, at);
  };
  const [found] = areasWhere(
    triangles,
    conditions,
    count,
    [Array.from({ length: count }, (_, i) => i)],
    [{ p: 0, q: 0, delta }],
  );
  if (found === undefined) throw new Error('no area');
  return found;
};

describe('the area of triangles in which conditions hold', () => {
  test('a disc: πr²', () => {
    const found = areaWhere(SQUARE, (p, q, v) => (v[0] = 1 - (p * p + q * q) / 36), 1, 2);
    expect(Math.abs(found.value - 36 * Math.PI)).toBeLessThan(1e-4);
    expect(Math.abs(found.value - 36 * Math.PI)).toBeLessThan(found.bound);
  });

  test('a ring between two circles, and a half of it', () => {
    const ring = areaWhere(
      SQUARE,
      (p, q, v) => {
        v[0] = 1 - (p * p + q * q) / 36;
        v[1] = (p * p + q * q) / 4 - 1;
        v[2] = p;
      },
      3,
      2,
    );
    expect(Math.abs(ring.value - 16 * Math.PI)).toBeLessThan(2e-4);
    expect(Math.abs(ring.value - 16 * Math.PI)).toBeLessThan(ring.bound);
  });

  test('an ellipse off the middle: πab', () => {
    const found = areaWhere(SQUARE, (p, q, v) => (v[0] = 1 - ((p - 3) / 5) ** 2 - ((q + 1) / 2) ** 2), 1, 3);
    expect(Math.abs(found.value - 10 * Math.PI)).toBeLessThan(3e-4);
  });

  test('two discs that overlap: their lens by the handbook formula', () => {
    // Circles of radius 4 whose middles are 4 apart share 2r² acos(d/2r) − (d/2)·√(4r² − d²).
    const share = 32 * Math.acos(0.5) - 2 * Math.sqrt(48);
    const found = areaWhere(
      SQUARE,
      (p, q, v) => {
        v[0] = 16 - (p - 2) ** 2 - q * q;
        v[1] = 16 - (p + 2) ** 2 - q * q;
      },
      2,
      1,
    );
    expect(Math.abs(found.value - share)).toBeLessThan(3e-4);
    expect(Math.abs(found.value - share)).toBeLessThan(found.bound);
  });

  test('a valley along the edge beyond which nothing counts: corners on both of its sides do not tell', () => {
    // As the stretch of an orthographic lens falls to nothing at 90° off its axis and rises again beyond.
    const found = areaWhere(
      SQUARE,
      (p, q, v) => {
        const off = p - 0.3 - 0.01 * q;
        v[0] = off;
        v[1] = (off / 0.05) ** 2 - 1;
      },
      2,
      2,
    );
    // To the right of the line lie 20 × 9.7 m², of which a strip of 0.05 m along p is taken.
    expect(Math.abs(found.value - 20 * 9.65)).toBeLessThan(1e-6);
  });

  test('outside a disc that a few pieces hold, whose curve crosses edges between corners that agree', () => {
    const chance = chanceFrom(91);
    const wrong: string[] = [];
    for (let trial = 0; trial < trials(1500, 4000); trial += 1) {
      const [away, rad] = [chance.between(4, 7.5), chance.between(0, 2 * Math.PI)];
      const [p0, q0] = [away * Math.cos(rad), away * Math.sin(rad)];
      const radius = chance.between(0.15, 0.3) * away;
      const found = areaWhere(
        SQUARE,
        (p, q, v) => (v[0] = ((p - p0) ** 2 + (q - q0) ** 2) / radius ** 2 - 1),
        1,
        2,
      );
      const off = Math.abs(found.value - 400 + Math.PI * radius ** 2);
      if (off > 0.012) wrong.push(`${p0} ${q0} ${radius}: ${off} ± ${found.bound}`);
    }
    expect(wrong, `seed ${chance.seed}`).toEqual([]);
  });
});
