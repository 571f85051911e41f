import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Roof } from '../../src/model/structure.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { meshFaults, volumeOf } from './meshChecks.ts';
import { buildingWith, flat, rectangle, turned } from './sampleStructures.ts';

/*
 * Volumes above the soffit, from the prismatoid formula V = h/6 · (lower area + 4 · middle area + upper area): any
 * handbook of mensuration, from memory. It is exact for solids with two parallel levels, such as these.
 */
const prismatoid = (height: number, lower: number, mid: number, upper: number): number =>
  (height / 6) * (lower + 4 * mid + upper);
const rise = (run: number, pitch: number): number => run * Math.tan((pitch * Math.PI) / 180);

const volumes = {
  /** A ridge as long as the building; the eaves overhang on two sides only. */
  gable: (long: number, short: number, pitch: number, over: number): number => {
    const span = short + 2 * over;
    return prismatoid(rise(span / 2, pitch), long * span, (long * span) / 2, 0);
  },
  /** Every eaves edge rises at the same pitch, so halfway up half the span is gone from both measures. */
  hip: (long: number, short: number, pitch: number, over: number): number => {
    const [a, b] = [long + 2 * over, short + 2 * over];
    return prismatoid(rise(b / 2, pitch), a * b, (a - b / 2) * (b / 2), 0);
  },
  /** A wedge: halfway up, half of it is left. */
  monopitch: (long: number, short: number, pitch: number, over: number): number => {
    const [a, b] = [long + 2 * over, short + 2 * over];
    return prismatoid(rise(b, pitch), a * b, (a * b) / 2, 0);
  },
};

const roofed = (roof: Partial<Roof>, outline: readonly Vec2[], height = 3) => {
  const { solids, faults } = solidsOf(buildingWith({ outline, height, roof: { ...flat, ...roof } }));
  const [solid] = solids;
  if (!solid) throw new Error(JSON.stringify(faults));
  return { solid, faults };
};
const tops3 = ({ positions }: { positions: Float64Array }): number[] =>
  [...positions].filter((_, k) => k % 3 === 2);
const inOrder = (points: readonly Vec2[]): Vec2[] => [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
const tops = ({ positions }: { positions: Float64Array }, z: number): Vec2[] => {
  const found: Vec2[] = [];
  for (let k = 0; k < positions.length; k += 3) {
    if (Math.abs((positions[k + 2] ?? 0) - z) < 1e-9) found.push([positions[k] ?? 0, positions[k + 1] ?? 0]);
  }
  return inOrder(found.map(([x, y]) => [Math.round(x * 1e9) / 1e9, Math.round(y * 1e9) / 1e9]));
};

describe('pitched roofs on rectangles', () => {
  test.each(['gable', 'hip', 'monopitch'] as const)('a %s has the volume of its prismatoid', (kind) => {
    for (let seed = 1; seed <= trials(100, 10_000); seed++) {
      const chance = chanceFrom(seed);
      const [p, q] = [chance.between(2, 20), chance.between(2, 20)];
      const [long, short] = [Math.max(p, q), Math.min(p, q)];
      const pitch = chance.between(3, 70);
      const overhang = chance.pick([0, chance.between(0.02, 1.2)]);
      const outline = turned(rectangle(p, q), chance.between(0, 360), [chance.between(-99, 99), 7]);
      const { solid } = roofed({ kind, pitch, overhang }, outline);
      expect(meshFaults(solid)).toEqual([]);
      const asked = p * q * 3 + volumes[kind](long, short, pitch, overhang);
      expect({ seed, ratio: volumeOf(solid) / asked }).toEqual({
        seed,
        ratio: expect.closeTo(1, 9) as unknown,
      });
    }
  });
  test('a gable runs its ridge along the longer side, or nearest to the bearing asked for', () => {
    const ridgeZ = 3 + rise(3, 35);
    expect(tops(roofed({ kind: 'gable' }, rectangle(10, 6)).solid, ridgeZ)).toEqual([
      [0, 3],
      [10, 3],
    ]);
    const across = 3 + rise(5, 35);
    for (const ridge of [0, 30, 180, 340]) {
      expect(tops(roofed({ kind: 'gable', ridge }, rectangle(10, 6)).solid, across)).toEqual([
        [5, 0],
        [5, 6],
      ]);
    }
    expect(tops(roofed({ kind: 'gable', ridge: 250 }, rectangle(10, 6)).solid, ridgeZ)).toHaveLength(2);
  });
  test('a gable overhangs at its eaves only', () => {
    const { solid } = roofed({ kind: 'gable', overhang: 0.5 }, rectangle(10, 6));
    expect(tops(solid, 3)).toEqual(
      inOrder([...rectangle(10, 6), [0, -0.5], [10, -0.5], [10, 6.5], [0, 6.5]]),
    );
  });
  test('a hip on a square comes to a point', () => {
    const { solid } = roofed({ kind: 'hip', overhang: 0.5 }, rectangle(6, 6));
    expect(tops(solid, 3 + rise(3.5, 35))).toEqual([[3, 3]]);
  });
  test('a mono-pitch falls across the shorter span to the south, or to the bearing asked for', () => {
    const high = (width: number, depth: number, ridge: number | null, span: number) =>
      tops(roofed({ kind: 'monopitch', ridge }, rectangle(width, depth)).solid, 3 + rise(span, 35));
    expect(high(10, 6, null, 6)).toEqual([
      [0, 6],
      [10, 6],
    ]);
    expect(high(10, 6, 0, 6)).toEqual([
      [0, 0],
      [10, 0],
    ]);
    expect(high(10, 6, 80, 10)).toEqual([
      [0, 0],
      [0, 6],
    ]);
    // Longer sides facing east and west: nearest to south is either, and stays the same either.
    expect(high(6, 10, null, 6)).toHaveLength(2);
  });
  test('a mono-pitch over a longer side turned to the south-west falls there', () => {
    const outline = turned(rectangle(10, 6), -45);
    const { solid } = roofed({ kind: 'monopitch' }, outline);
    const high = tops(solid, 3 + rise(6, 35));
    expect(high.every(([x, y]) => x + y > 8)).toBe(true);
  });
  test('a four-cornered outline that is not square has its gables too', () => {
    const skew = (by: number): Vec2[] => [
      [0, 0],
      [10, 0],
      [10 + by, 6],
      [by, 6],
    ];
    for (const by of [0.09, 0.2, 2]) {
      const { solid, faults } = roofed({ kind: 'gable', overhang: 0.3 }, skew(by));
      expect(faults).toEqual([]);
      expect(meshFaults(solid)).toEqual([]);
      // The ridge is as far from both long walls, whatever the angle of the short ones.
      expect(Math.max(...tops3(solid))).toBeCloseTo(3 + rise(3.3, 35), 9);
    }
  });
  test('a pitch that makes no roof is built flat, and says which will do', () => {
    for (const pitch of [0, -10, 90, Number.NaN]) {
      const { faults, solid } = roofed({ kind: 'gable', pitch }, rectangle(10, 6));
      expect(faults).toMatchObject([{ code: 'roof.pitch', path: ['roof', 'pitch'] }]);
      expect(volumeOf(solid)).toBeCloseTo(180, 9);
    }
  });
});

describe('flat roofs', () => {
  test('a deck follows an outline that turns inwards, and bridges a courtyard too small for it', () => {
    const lShape: Vec2[] = [
      [0, 0],
      [9, 0],
      [9, 4],
      [5, 4],
      [5, 8],
      [0, 8],
    ];
    const grown = 10 * 5 + 6 * 4;
    const deck = roofed({ overhang: 0.5 }, lShape).solid;
    expect(meshFaults(deck)).toEqual([]);
    expect(volumeOf(deck)).toBeCloseTo(56 * 3 + grown * 0.2, 6);
    const holes = [rectangle(0.8, 0.8, [2, 2])];
    const [bridged] = solidsOf(buildingWith({ holes, roof: { ...flat, overhang: 0.5 } })).solids;
    expect(bridged && volumeOf(bridged)).toBeCloseTo((60 - 0.64) * 3 + 11 * 7 * 0.2, 6);
    expect(bridged && meshFaults(bridged)).toEqual([]);
  });
  test('a parapet runs around courtyards too', () => {
    const holes = [rectangle(2, 2, [3, 2])];
    const [solid] = solidsOf(
      buildingWith({ holes, roof: { ...flat, kind: 'parapet', parapet: 0.5 } }),
    ).solids;
    const ring = 60 - 9.6 * 5.6 + (2.4 * 2.4 - 4);
    expect(solid && volumeOf(solid)).toBeCloseTo(56 * 3 + ring * 0.5, 6);
  });
  test('a building too narrow for two upstands is solid up to its parapet, with a note', () => {
    const { solid, faults } = roofed({ kind: 'parapet', parapet: 0.5 }, rectangle(5, 0.3));
    expect(faults).toMatchObject([{ code: 'roof.parapet-narrow' }]);
    expect(volumeOf(solid)).toBeCloseTo(5 * 0.3 * 3.5, 9);
  });
  test('a parapet or overhang that makes no sense is left out, and says so', () => {
    expect(roofed({ kind: 'parapet', parapet: -1 }, rectangle(5, 5)).faults).toMatchObject([
      { code: 'roof.parapet' },
    ]);
    expect(roofed({ overhang: -1 }, rectangle(5, 5)).faults).toMatchObject([{ code: 'roof.overhang' }]);
    expect(roofed({ overhang: Number.NaN }, rectangle(5, 5)).faults).toMatchObject([
      { code: 'roof.overhang' },
    ]);
  });
});
