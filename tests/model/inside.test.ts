import { describe, expect, test } from 'vitest';
import { horizontalPlane } from '../../src/base/plane.ts';
import type { Vec3 } from '../../src/base/vector.ts';
import { insideSolid, windingNumber } from '../../src/model/inside.ts';
import type { Solid } from '../../src/model/solid.ts';
import { solidsOf } from '../../src/model/solids.ts';
import { sliceAt } from '../../src/model/slice.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { randomBarrier, randomBuilding } from './randomStructures.ts';
import { buildingWith, flat } from './sampleStructures.ts';

const first = (solids: readonly Solid[]): Solid => {
  const [solid] = solids;
  if (!solid) throw new Error('nothing was built');
  return solid;
};
const gabled = first(solidsOf(buildingWith({ roof: { ...flat, kind: 'gable', pitch: 45 } })).solids);

/** A place in and around the box of a solid. */
const placeNear = (chance: Chance, { positions }: Solid): Vec3 => {
  const range = (axis: number): number => {
    const values = positions.filter((_, k) => k % 3 === axis);
    return chance.between(Math.min(...values) - 0.5, Math.max(...values) + 0.5);
  };
  return [range(0), range(1), range(2)];
};

/** How many segments of a slice a level ray to the east crosses: odd inside. */
const crossings = (segments: Float64Array, x: number, y: number): number => {
  let count = 0;
  for (let k = 0; k < segments.length; k += 4) {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = segments.subarray(k, k + 4);
    if (y1 > y !== y2 > y && x1 + ((y - y1) / (y2 - y1)) * (x2 - x1) > x) count++;
  }
  return count;
};

describe('insideSolid', () => {
  test('is exact a millimetre to either side of wall, roof and floor', () => {
    // Under a gable of 45° over 10 × 6 × 3 m: y + z ≤ … on the south slope is z − 3 ≤ y.
    const pairs: readonly (readonly [Vec3, Vec3])[] = [
      [
        [5, 0.001, 1],
        [5, -0.001, 1],
      ],
      [
        [9.999, 3, 5],
        [10.001, 3, 5],
      ],
      [
        [5, 2, 4.999],
        [5, 2, 5.001],
      ],
      [
        [5, 3, 5.999],
        [5, 3, 6.001],
      ],
      [
        [5, 3, 0.001],
        [5, 3, -0.001],
      ],
      [
        [0.001, 0.001, 2.999],
        [-0.001, -0.001, 3.001],
      ],
    ];
    for (const [within, without] of pairs) {
      expect([insideSolid(gabled, within), insideSolid(gabled, without)]).toEqual([true, false]);
    }
  });
  test('knows a room from its walls', () => {
    const hollow = first(solidsOf(buildingWith({ wallThickness: 0.3 })).solids);
    expect(insideSolid(hollow, [5, 3, 1])).toBe(false);
    expect(insideSolid(hollow, [5, 0.15, 1])).toBe(true);
    expect(insideSolid(hollow, [5, 3, 2.9])).toBe(true);
  });
  test('a random solid goes around every place once or not at all: it nowhere overlaps itself', () => {
    for (let seed = 1; seed <= trials(300, 10_000); seed++) {
      const chance = chanceFrom(seed);
      const [solid] = solidsOf(chance.next() < 0.6 ? randomBuilding(chance) : randomBarrier(chance)).solids;
      if (!solid) continue;
      for (let k = 0; k < 4; k++) {
        const winding = windingNumber(solid, placeNear(chance, solid));
        expect({ seed, off: Math.min(Math.abs(winding), Math.abs(winding - 1)) < 1e-6 }).toEqual({
          seed,
          off: true,
        });
      }
    }
  });
});

describe('sliceAt', () => {
  test('has the solid on its left', () => {
    const cut = sliceAt(gabled, horizontalPlane(1));
    let twice = 0;
    for (let k = 0; k < cut.length; k += 4) {
      const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = cut.subarray(k, k + 4);
      twice += x1 * y2 - x2 * y1;
    }
    expect(twice / 2).toBeCloseTo(60, 9);
  });
  test('at the foot of a solid is the cut just above it, and at its top is empty', () => {
    const box = first(solidsOf(buildingWith()).solids);
    expect(crossings(sliceAt(box, horizontalPlane(0)), 5, 3)).toBe(1);
    expect([...sliceAt(box, horizontalPlane(3))]).toEqual([]);
    expect([...sliceAt(box, horizontalPlane(5))]).toEqual([]);
    const eaves = sliceAt(gabled, horizontalPlane(3));
    expect(crossings(eaves, 5, 3)).toBe(1);
  });
  test('closes: every segment begins where another ends, bit by bit', () => {
    for (let seed = 1; seed <= trials(300, 10_000); seed++) {
      const chance = chanceFrom(seed);
      const [solid] = solidsOf(chance.next() < 0.6 ? randomBuilding(chance) : randomBarrier(chance)).solids;
      if (!solid) continue;
      // A height of one of its corners is where things go wrong.
      const z = solid.positions[3 * chance.whole(0, solid.positions.length / 3 - 1) + 2] ?? 0;
      const cut = sliceAt(solid, horizontalPlane(z));
      const balance = new Map<string, number>();
      for (let k = 0; k < cut.length; k += 4) {
        const [from, to] = [`${cut[k]},${cut[k + 1]}`, `${cut[k + 2]},${cut[k + 3]}`];
        balance.set(from, (balance.get(from) ?? 0) + 1);
        balance.set(to, (balance.get(to) ?? 0) - 1);
      }
      expect({ seed, open: [...balance.values()].filter((count) => count !== 0) }).toEqual({
        seed,
        open: [],
      });
    }
  });
  test('crossing parity agrees with the winding number, just above heights of corners too', () => {
    let within = 0;
    for (let seed = 1; seed <= trials(300, 10_000); seed++) {
      const chance = chanceFrom(seed);
      const [solid] = solidsOf(chance.next() < 0.6 ? randomBuilding(chance) : randomBarrier(chance)).solids;
      if (!solid) continue;
      const corner = solid.positions[3 * chance.whole(0, solid.positions.length / 3 - 1) + 2] ?? 0;
      const [x, y, anywhere] = placeNear(chance, solid);
      const z = chance.pick([corner, anywhere]);
      const isIn = insideSolid(solid, [x, y, z + 1e-5]);
      if (isIn) within++;
      const odd = crossings(sliceAt(solid, horizontalPlane(z)), x, y) % 2 === 1;
      expect({ seed, isIn }).toEqual({ seed, isIn: odd });
    }
    expect(within).toBeGreaterThan(20);
  });
});
