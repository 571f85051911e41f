import { describe, expect, test } from 'vitest';
import { orientation } from '../../src/base/orientation.ts';
import type { Vec2 } from '../../src/base/vector.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

/** A double as a whole number of 2⁻¹⁰⁷⁴, the smallest there is. */
const exact = (value: number): bigint => {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, value);
  const whole = bits.getBigUint64(0);
  const exponent = Number((whole >> 52n) & 0x7ffn);
  const fraction = whole & 0xfffffffffffffn;
  const size = exponent === 0 ? fraction : (fraction | 0x10000000000000n) << BigInt(exponent - 1);
  return value < 0 ? -size : size;
};

/** The determinant in whole numbers, without rounding. */
const judged = (a: Vec2, b: Vec2, c: Vec2): number => {
  const [ax, ay, bx, by, cx, cy] = [...a, ...b, ...c].map(exact);
  if (ax === undefined || ay === undefined || bx === undefined) throw new Error('six numbers');
  if (by === undefined || cx === undefined || cy === undefined) throw new Error('six numbers');
  const value = (ax - cx) * (by - cy) - (ay - cy) * (bx - cx);
  return value > 0n ? 1 : value < 0n ? -1 : 0;
};

describe('orientation', () => {
  test('tells left, right and on the line', () => {
    expect(orientation([0, 0], [1, 0], [0, 1])).toBe(1);
    expect(orientation([0, 0], [1, 0], [0, -1])).toBe(-1);
    expect(orientation([0, 0], [1, 1], [3, 3])).toBe(0);
  });
  test('is that of whole numbers a hair beside a line, where rounding would decide', () => {
    let decidedByRounding = 0;
    for (let seed = 1; seed <= trials(2000, 200_000); seed++) {
      const chance = chanceFrom(seed);
      const a: Vec2 = [chance.between(-100_000, 100_000), chance.between(-100_000, 100_000)];
      const b: Vec2 = [chance.between(-100_000, 100_000), chance.between(-100_000, 100_000)];
      const t = chance.between(-1, 2);
      const nudge = chance.pick([0, 0, 2 ** -40, -(2 ** -36)]);
      const c: Vec2 = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]) + nudge];
      const sign = judged(a, b, c);
      expect({ seed, sign: orientation(a, b, c) }).toEqual({ seed, sign });
      const plain = (a[0] - c[0]) * (b[1] - c[1]) - (a[1] - c[1]) * (b[0] - c[0]);
      if (Math.sign(plain) !== sign) decidedByRounding++;
    }
    expect(decidedByRounding).toBeGreaterThan(10);
  });
});
