import { describe, expect, test } from 'vitest';
import { areaWithin, ARC, straightRings, type ArcRings } from '../../src/sight/arcRings.ts';
import { levelRings } from '../../src/sight/levelRings.ts';
import { areasByCount } from '../../src/sight/overlaid.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { areasBySlabs } from '../oracle/slabCount.ts';

type Ring = readonly (readonly [number, number])[];

const ringsOf = (rings: readonly Ring[]): ArcRings =>
  straightRings(rings.map((ring) => Float64Array.from(ring.flat())));

const box = (left: number, bottom: number, right: number, top: number): Ring => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

/** A star around a point: simple whatever its radii; on a lattice now and then, where corners and edges coincide. */
function star(chance: Chance, snap: boolean): Ring {
  const corners = chance.whole(3, 9);
  const [x, y] = [chance.whole(-4, 4), chance.whole(-4, 4)];
  return Array.from({ length: corners }, (_, at) => {
    const angle = (2 * Math.PI * (at + chance.between(0, 0.6))) / corners;
    const radius = chance.between(1, 6);
    const place = [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const;
    return snap ? ([x + Math.round(radius) * Math.sign(place[0] - x), Math.round(place[1])] as const) : place;
  });
}

const isSimple = (ring: Ring): boolean => {
  const area = areaWithin(ringsOf([ring]));
  const slabs = areasBySlabs([[ring]])[0] ?? 0;
  return area > 0.1 && Math.abs(area - slabs) < 1e-9;
};

/** A random region: a star, a lattice box, or a box with a hole. */
function region(chance: Chance, snap: boolean): readonly Ring[] {
  if (chance.next() < 0.3) {
    const [x, y] = [chance.whole(-6, 2), chance.whole(-6, 2)];
    const outer = box(x, y, x + chance.whole(3, 6), y + chance.whole(3, 6));
    return chance.next() < 0.5 ? [outer] : [outer, box(x + 1, y + 1, x + 2, y + 2).toReversed()];
  }
  for (;;) {
    const ring = star(chance, snap);
    if (isSimple(ring)) return [ring];
  }
}

const expectLike = (found: Float64Array, wanted: readonly number[], about: string): void =>
  found.forEach((area, count) =>
    expect(Math.abs(area - (wanted[count] ?? 0)), `${about}, at least ${count + 1}`).toBeLessThan(1e-6),
  );

describe('areas by how many regions cover them', () => {
  test('agree with slabs for random regions, on a lattice and off it, some of them twice', () => {
    const chance = chanceFrom(31);
    for (let trial = 0; trial < trials(150, 4000); trial += 1) {
      const snap = chance.next() < 0.5;
      const regions = Array.from({ length: chance.whole(2, 7) }, () => region(chance, snap));
      const [first = []] = regions;
      if (chance.next() < 0.4) regions.push(first, first);
      expectLike(areasByCount(regions.map(ringsOf)), areasBySlabs(regions), `seed 31, trial ${trial}`);
    }
  });

  test('agree where edges lie a nanometre apart, cross at a hair’s angle or share a line in part', () => {
    const chance = chanceFrom(32);
    for (let trial = 0; trial < trials(150, 4000); trial += 1) {
      const near = (n: number): number => n + chance.pick([0, 0, 1e-12, -1e-9, 1e-9, 3e-8]);
      const regions = Array.from({ length: chance.whole(2, 8) }, () => [
        box(chance.whole(-4, 0), chance.whole(-4, 0), chance.whole(1, 5), chance.whole(1, 5)).map(
          ([x, y]) => [near(x), near(y)] as const,
        ),
      ]);
      expectLike(areasByCount(regions.map(ringsOf)), areasBySlabs(regions), `seed 32, trial ${trial}`);
    }
  });

  test('of one region many times over are its area for every count', () => {
    const one = ringsOf([
      [
        [0.1, 0.2],
        [7.3, 1.1],
        [4.9, 6.7],
        [2.2, 2.9],
      ],
    ]);
    const areas = areasByCount(Array.from({ length: 30 }, () => one));
    for (const area of areas) expect(area).toBeCloseTo(areaWithin(one), 8);
  });

  test('of regions that only touch are their sum for one and nothing for two', () => {
    const areas = areasByCount([ringsOf([box(0, 0, 3, 5)]), ringsOf([box(3, 1, 8, 4)])]);
    expect(areas[0]).toBeCloseTo(30, 9);
    expect(areas[1]).toBeCloseTo(0, 9);
  });

  test('of regions that lie within one another are those of each in turn', () => {
    const nested = [9, 4, 7, 1].map((half) => ringsOf([box(-half, -half, half, half)]));
    [18, 14, 8, 2].forEach((side, count) => expect(areasByCount(nested)[count]).toBeCloseTo(side * side, 8));
  });

  test('of none are none, and an empty region counts for nothing', () => {
    expect(areasByCount([])).toHaveLength(0);
    expect([...areasByCount([ringsOf([]), ringsOf([box(0, 0, 2, 2)])])]).toEqual([4, 0]);
  });

  test('of two discs, each of a few arcs, are those of the handbook', () => {
    // Circles of radius 4 whose middles are 4 apart share 2r² acos(d/2r) − (d/2)·√(4r² − d²).
    const shared = 32 * Math.acos(0.5) - 2 * Math.sqrt(48);
    const areas = areasByCount([disc(-2, 0, 4, 200), disc(2, 0, 4, 173)]);
    expect(Math.abs((areas[1] ?? 0) - shared)).toBeLessThan(1e-5);
    expect(Math.abs((areas[0] ?? 0) - (32 * Math.PI - shared))).toBeLessThan(1e-5);
  });

  test('of one disc in two unlike sets of chords are the disc, not the chords', () => {
    for (const area of areasByCount([disc(0, 0, 4, 200), disc(0, 0, 4, 173)]))
      expect(Math.abs(area - 16 * Math.PI)).toBeLessThan(1e-5);
  });
});

/** A disc of chords that know their arcs. */
function disc(x: number, y: number, radius: number, chords: number): ArcRings {
  const turn = (2 * Math.PI) / chords;
  const { corners, starts } = ringsOf([
    Array.from(
      { length: chords },
      (_, at) => [x + radius * Math.cos(at * turn), y + radius * Math.sin(at * turn)] as const,
    ),
  ]);
  const arcs = new Float64Array(chords * ARC);
  for (let at = 0; at < chords; at += 1)
    arcs.set([(radius * radius * (turn - Math.sin(turn))) / 2, 0, 1], at * ARC);
  return { corners, starts, arcs };
}

describe('the rings of what several regions cover together', () => {
  test('enclose the area of that count, for every count', () => {
    const chance = chanceFrom(33);
    for (let trial = 0; trial < trials(150, 4000); trial += 1) {
      const snap = chance.next() < 0.5;
      const regions = Array.from({ length: chance.whole(2, 6) }, () => ringsOf(region(chance, snap)));
      const [first] = regions;
      if (first && chance.next() < 0.3) regions.push(first);
      areasByCount(regions).forEach((area, count) =>
        expect(
          Math.abs(areaWithin(levelRings(regions, count + 1)) - area),
          `seed 33, trial ${trial}, at least ${count + 1}`,
        ).toBeLessThan(1e-6),
      );
    }
  });

  test('of arcs keep what of each arc is theirs', () => {
    const discs = [disc(-2, 0, 4, 40), disc(2, 0, 4, 37), disc(0, 3, 4, 41)];
    const areas = areasByCount(discs);
    areas.forEach((area, count) => expect(areaWithin(levelRings(discs, count + 1))).toBeCloseTo(area, 9));
  });
});

test('an arc that has been cut in two counts as the whole one, also where another region crosses its second part', () => {
  // A square whose upper edge bulges by 0.6 m²; the bulge's edge runs from (4, 4) to (0, 4), cut at its share 0.4.
  const whole: ArcRings = {
    corners: Float64Array.of(0, 0, 4, 0, 4, 4, 0, 4),
    starts: Int32Array.of(0, 4),
    arcs: Float64Array.of(0, 0, 0, 0, 0, 0, 0.6, 0, 1, 0, 0, 0),
  };
  const cut: ArcRings = {
    corners: Float64Array.of(0, 0, 4, 0, 4, 4, 2.4, 4, 0, 4),
    starts: Int32Array.of(0, 5),
    arcs: Float64Array.of(0, 0, 0, 0, 0, 0, 0.6, 0, 0.4, 0.6, 0.4, 1, 0, 0, 0),
  };
  for (const [left, right] of [
    [0.5, 1.5],
    [1, 9],
    [-3, 2],
    [3, 3.5],
  ] as const) {
    const other = ringsOf([box(left, -1, right, 9)]);
    const [one, two] = [areasByCount([whole, other]), areasByCount([cut, other])];
    expect(one[0]).toBeCloseTo(two[0] ?? NaN, 6);
    expect(one[1]).toBeCloseTo(two[1] ?? NaN, 6);
    expect((one[0] ?? 0) + (one[1] ?? 0)).toBeCloseTo(16.6 + (right - left) * 10, 6);
  }
});
