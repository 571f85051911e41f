import { describe, expect, test } from 'vitest';
import type { Conditions } from '../../src/coverage/curve.ts';
import { refine } from '../../src/coverage/fineMesh.ts';
import { LevelCurve } from '../../src/coverage/levelCurve.ts';
import { polarMesh } from '../../src/coverage/polarMesh.ts';
import { areaWithin, polygonRings } from '../../src/sight/arcRings.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

const SQUARE = polygonRings([
  [-10, -10],
  [10, -10],
  [10, 10],
  [-10, 10],
]);
const LENS = { p: 0, q: 0, delta: 2 };

/** The area of the mesh around a square in which a function is ≥ 0. */
function areaWhere(
  of: (p: number, q: number) => number,
  more: readonly { p: number; q: number }[] = [],
): number {
  const conditions: Conditions = (p, q, values, at) => {
    values[at] = of(p, q);
  };
  const sources = [LENS, ...more.map(({ p, q }) => ({ p, q, delta: 0.02 }))];
  const mesh = refine(polarMesh(conditions, 1, SQUARE, LENS.delta), sources);
  const rings = new LevelCurve(mesh, sources).rings(0);
  if (rings === null) throw new Error('the condition holds everywhere');
  return areaWithin(rings);
}

describe('the rings of where a condition holds', () => {
  test('around a disc at the foot, and one beside it, enclose πr²', () => {
    expect(areaWhere((p, q) => 1 - (p * p + q * q) / 36)).toBeCloseTo(36 * Math.PI, 3);
    expect(areaWhere((p, q) => 1 - ((p - 3) ** 2 + (q + 4) ** 2) / 4)).toBeCloseTo(4 * Math.PI, 3);
  });

  test('around a hole leave it out', () => {
    const pierced = (radius: number) => areaWhere((p, q) => (p - 5) ** 2 + q * q - radius * radius);
    expect(pierced(1) - pierced(2)).toBeCloseTo(3 * Math.PI, 3);
    expect(pierced(1)).toBeGreaterThan(400 - Math.PI);
  });

  test('find discs and holes that are smaller than what lies between corners of the mesh', () => {
    const chance = chanceFrom(51);
    for (let trial = 0; trial < trials(60, 3000); trial += 1) {
      const [p0, q0] = [
        chance.between(4, 7) * chance.pick([1, -1]),
        chance.between(4, 7) * chance.pick([1, -1]),
      ];
      // Corners lie an eighth of the distance apart.
      const radius = chance.between(0.03, 0.06) * Math.hypot(p0, q0);
      const disc = areaWhere((p, q) => radius * radius - (p - p0) ** 2 - (q - q0) ** 2);
      expect(disc, `seed 51, trial ${trial}: ${p0}, ${q0}, ${radius}`).toBeCloseTo(
        Math.PI * radius * radius,
        4,
      );
    }
  });

  test('find a strip that is narrower than what lies between corners', () => {
    // Across the square's middle along a slant: the strip of a circle so large that it is nearly straight.
    const ring = areaWhere((p, q) => 0.05 ** 2 - (Math.hypot(p, q) - 6.03) ** 2);
    expect(ring).toBeCloseTo(Math.PI * (6.08 ** 2 - 5.98 ** 2), 3);
  });

  test('follow spokes into a place about which a condition hangs on the direction alone', () => {
    // A quarter of a disc around a place off the foot: by direction, and cut at a radius of 2.
    const [p0, q0] = [5.3, -3.1];
    const turned = (p: number, q: number) => {
      const [x, y] = [p - p0, q - q0];
      const over = Math.hypot(x, y);
      return Math.min(over === 0 ? -1 : (x * y) / (over * over) + Math.min(0, x / over), 1 - over / 2);
    };
    expect(areaWhere(turned, [{ p: p0, q: q0 }])).toBeCloseTo(Math.PI, 4);
  });
});
