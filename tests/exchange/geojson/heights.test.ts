import { describe, expect, test } from 'vitest';
import { taggedBearing, taggedLength, taggedNumber } from '../../../src/exchange/geojson/tags.ts';
import { solidsOf } from '../../../src/model/solids.ts';
import type { Building } from '../../../src/model/structure.ts';
import { at, found, polygon } from '../opened.ts';

describe('tags', () => {
  test.each([
    ['12', 12],
    ['12 m', 12],
    ['12m', 12],
    ['12.5', 12.5],
    ['12,5', 12.5],
    ["40'", 12.192],
    ['40 ft', 12.192],
    ['7\'4"', 2.2352],
    ['~8', 8],
    ['250 cm', 2.5],
  ])('%s is a length of %d m', (text, metres) => {
    expect(taggedLength({ height: text }, 'height')).toBeCloseTo(metres, 9);
  });

  test.each(['', 'tall', '3-4', '10;12', '2 + 2', '5*5', '1,234.5', '-3', 'NaN', '1e400'])(
    '%j is no length',
    (text) => {
      expect(taggedLength({ height: text }, 'height')).toBeNull();
    },
  );

  test('numbers and bearings are read or not at all', () => {
    expect(taggedNumber({ a: '2,5' }, 'a')).toBe(2.5);
    for (const text of ['-1', 'two', '1;2', '']) expect(taggedNumber({ a: text }, 'a')).toBeNull();
    expect(taggedBearing({ a: 'SSW' }, 'a')).toBe(202.5);
    expect(taggedBearing({ a: '-90' }, 'a')).toBe(270);
    for (const text of ['', 'up', '400']) expect(taggedBearing({ a: text }, 'a')).toBeNull();
  });
});

/** 12 m from west to east, 6 m from south to north. */
const long = [at(0, 0), at(12, 0), at(12, 6), at(0, 6), at(0, 0)];

const built = (tags: Record<string, string>, ring = long): Building => {
  const [structure] = found(polygon([ring], { building: 'house', ...tags })).structures;
  if (structure?.kind !== 'building') throw new Error('no building');
  return structure;
};

/** The highest corner of what is built, m: the judge of wall and roof together. */
const topOf = (building: Building): number =>
  Math.max(
    ...solidsOf(building).solids.flatMap(({ positions }) =>
      [...positions].filter((_, index) => index % 3 === 2),
    ),
  );

describe('heights', () => {
  test.each<[Record<string, string>, number, number, string]>([
    [{ height: '9' }, 0, 9, 'mapped'],
    [{ 'building:levels': '3' }, 0, 9, 'mapped'],
    [{ 'building:levels': '2', 'roof:levels': '1' }, 0, 9, 'mapped'],
    [{ height: '20', 'building:levels': '3' }, 0, 20, 'mapped'],
    [{ height: '30', min_height: '12' }, 12, 18, 'mapped'],
    [{ 'building:levels': '5', 'building:min_level': '2' }, 6, 9, 'mapped'],
    [{ building: 'garage' }, 0, 3, 'guessed'],
    [{}, 0, 6, 'guessed'],
    [{ height: 'tall' }, 0, 6, 'guessed'],
    [{ height: '-1' }, 0, 6, 'guessed'],
    [{ height: '0' }, 0, 6, 'guessed'],
  ])('%j stands from %d m, %d m high, %s', (tags, base, height, got) => {
    expect(built(tags)).toMatchObject({ base, height, got: { height: got } });
  });

  test('that contradict one another leave the building out by name', () => {
    const { report, notes } = found(
      polygon([long], { building: 'yes', name: 'Upside down', height: '3', min_height: '9' }),
      polygon([long], { building: 'yes' }),
    );
    expect(report.left).toContainEqual({ code: 'left.heights', count: 1, names: ['Upside down'] });
    expect(notes).toMatchObject([
      { code: 'geojson.heights', subject: 'Upside down', given: 'height 3, min_height 9' },
    ]);
  });

  test('above a kilometre leave it out too', () => {
    expect(found(polygon([long], { building: 'yes', height: '1001' }), polygon([long])).notes).toMatchObject([
      { code: 'geojson.tall' },
    ]);
  });
});

describe('roofs', () => {
  test('a tagged height includes the roof: the wall is what is left', () => {
    const house = built({ height: '8', 'roof:shape': 'gabled', 'roof:height': '3' });
    expect(house).toMatchObject({
      height: 5,
      roof: { kind: 'gable' },
      got: { height: 'mapped', roof: 'mapped' },
    });
    expect(house.roof.pitch).toBeCloseTo(45, 0);
    expect(topOf(house)).toBeCloseTo(8, 2);
  });

  test('levels are below the roof, which comes on top', () => {
    const house = built({ 'building:levels': '2', 'roof:shape': 'gabled', 'roof:angle': '40' });
    expect(house).toMatchObject({ height: 6, roof: { pitch: 40 } });
    expect(topOf(house)).toBeCloseTo(6 + 3 * Math.tan((40 * Math.PI) / 180), 1);
  });

  test.each([
    ['gabled', 8],
    ['hipped', 8],
    ['skillion', 8],
  ])('the top of a %s roof is the tagged height', (shape, height) => {
    for (const more of [
      {},
      { 'roof:orientation': 'across' },
      { 'roof:direction': '90' },
      { 'roof:direction': 'S' },
    ] as Record<string, string>[]) {
      const house = built({ height: String(height), 'roof:height': '2', 'roof:shape': shape, ...more });
      expect(topOf(house)).toBeCloseTo(height, 2);
    }
  });

  test('a ridge runs along the longer side, or across it, or square to the direction that the roof faces', () => {
    const across = built({
      height: '8',
      'roof:shape': 'gabled',
      'roof:height': '3',
      'roof:orientation': 'across',
    });
    expect((across.roof.ridge ?? NaN) % 180).toBeCloseTo(0, 0);
    const east = built({ height: '8', 'roof:shape': 'gabled', 'roof:height': '3', 'roof:direction': 'E' });
    expect(east.roof.ridge).toBeCloseTo(180, 0);
    expect(built({ height: '8', 'roof:shape': 'gabled' }).roof.ridge).toBeNull();
  });

  test('a mono-pitch falls towards the direction that it faces', () => {
    expect(
      built({ height: '5', 'roof:shape': 'skillion', 'roof:height': '1', 'roof:direction': 'N' }).roof,
    ).toMatchObject({ kind: 'monopitch', ridge: 0 });
  });

  test('a shape without a size is pitched 35° and is a guess, as is the wall below it', () => {
    expect(built({ height: '9', 'roof:shape': 'hipped' })).toMatchObject({
      roof: { kind: 'hip', pitch: 35 },
      got: { roof: 'guessed', height: 'guessed' },
    });
  });

  test('joints in the sides of a rectangle do not spoil its roof', () => {
    const jointed = [at(0, 0), at(5, 0), at(12, 0), at(12, 6), at(7, 6), at(0, 6), at(0, 0)];
    const house = built({ height: '8', 'roof:shape': 'gabled', 'roof:height': '2' }, jointed);
    expect(house.roof.kind).toBe('gable');
    expect(house.outline).toHaveLength(4);
  });

  test.each(['gabled', 'hipped', 'skillion'])(
    '%s stands on an outline with wings, as high as tagged',
    (shape) => {
      const ell = [at(0, 0), at(12, 0), at(12, 6), at(7, 6), at(7, 12), at(0, 12), at(0, 0)];
      const house = built({ height: '8', 'roof:shape': shape, 'roof:height': '3' }, ell);
      expect(house.roof.kind).not.toBe('flat');
      expect(topOf(house)).toBeCloseTo(8, 2);
      expect(house.height).toBeCloseTo(5, 2);
    },
  );

  test('a roof around a courtyard is as high as tagged', () => {
    const court = [at(3, 3), at(9, 3), at(9, 9), at(3, 9), at(3, 3)];
    const outer = [at(0, 0), at(12, 0), at(12, 12), at(0, 12), at(0, 0)];
    for (const hole of [court, court.toReversed()]) {
      const { structures } = found(
        polygon([outer, hole], { building: 'yes', height: '8', 'roof:shape': 'hipped', 'roof:height': '1' }),
      );
      const [house] = structures;
      expect(house).toMatchObject({ roof: { kind: 'hip' } });
      expect(house?.kind === 'building' && topOf(house)).toBeCloseTo(8, 2);
    }
  });

  test('shapes that are not made, and roofs that leave no wall, are flat at their full height, and counted', () => {
    const ell = [at(0, 0), at(12, 0), at(12, 6), at(6, 6), at(6, 12), at(0, 12), at(0, 0)];
    const { structures, report } = found(
      polygon([ell], { building: 'yes', height: '8', 'roof:shape': 'pyramidal', 'roof:height': '3' }),
      polygon([long], { building: 'yes', height: '8', 'roof:shape': 'dome', 'roof:height': '3' }),
      polygon([long], { building: 'yes', height: '8', 'roof:shape': 'pyramidal', 'roof:height': '3' }),
      polygon([long], { building: 'yes', height: '3', 'roof:shape': 'gabled', 'roof:height': '3' }),
    );
    for (const structure of structures) expect(structure).toMatchObject({ roof: { kind: 'flat' } });
    expect(structures.map((one) => one.kind === 'building' && one.height)).toEqual([8, 8, 8, 3]);
    expect(report.assumed.map(({ code, count }) => [code, count])).toEqual([
      ['assumed.flat-shape', 3],
      ['assumed.flat-steep', 1],
    ]);
  });
});
