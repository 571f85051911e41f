import { describe, expect, test } from 'vitest';
import { faultText } from '../../../src/plan/faultText.ts';
import { signedArea } from '../../../src/model/ring.ts';
import type { Structure } from '../../../src/model/structure.ts';
import { importGeojson } from '../../../src/exchange/geojson/importGeojson.ts';
import { at, collection, feature, finish, found, imported, polygon, square } from '../opened.ts';

const only = (structures: readonly Structure[]): Structure => {
  const [one, ...others] = structures;
  if (!one || others.length > 0) throw new Error(`one structure was expected, got ${structures.length}`);
  return one;
};
const building = (...features: unknown[]) => {
  const structure = only(found(...features).structures);
  if (structure.kind !== 'building') throw new Error(`a building was expected, got a ${structure.kind}`);
  return structure;
};
const faultOf = (document: unknown) => {
  const outcome = finish(importGeojson(document));
  if (outcome.ok) throw new Error('the map was accepted');
  return outcome.faults[0];
};

describe('rings', () => {
  test('come in metres about the middle of the buildings, counter-clockwise, the first corner not repeated', () => {
    const { outline } = building(polygon([square(0, 0, 10)]));
    expect(outline).toHaveLength(4);
    expect(signedArea(outline)).toBeCloseTo(100, 0);
    expect(outline[0]?.[0]).toBeCloseTo(-5, 1);
  });

  test('that run the wrong way are turned', () => {
    const ring = square(0, 0, 10).toReversed();
    expect(signedArea(building(polygon([ring])).outline)).toBeCloseTo(100, 0);
  });

  test('with a hole keep it, clockwise, however it ran', () => {
    for (const hole of [square(3, 3, 4), square(3, 3, 4).toReversed()]) {
      const { holes } = building(polygon([square(0, 0, 10), hole]));
      expect(holes).toHaveLength(1);
      expect(signedArea(holes[0] ?? [])).toBeCloseTo(-16, 0);
    }
  });

  test('of a multipolygon become a structure each, with ids of their own', () => {
    const many = feature(
      { type: 'MultiPolygon', coordinates: [[square(0, 0, 10)], [square(20, 0, 5)]] },
      { building: 'yes', name: 'Mill' },
      'relation/7',
    );
    const { structures } = found(many);
    expect(structures.map(({ name }) => name)).toEqual(['Mill', 'Mill']);
    expect(structures[0]?.id).toBe('relation-7');
    expect(new Set(structures.map(({ id }) => id)).size).toBe(2);
  });

  test('that cross themselves are refused by name, and the others stay', () => {
    const bow = [at(0, 0), at(10, 10), at(10, 0), at(0, 10), at(0, 0)];
    const { structures, report, notes } = found(
      polygon([bow], { building: 'yes', name: 'Bow tie' }, 'way/5'),
      polygon([square(30, 0, 8)]),
    );
    expect(structures).toHaveLength(1);
    expect(report.left).toContainEqual({ code: 'left.outline', count: 1, names: ['Bow tie'] });
    expect(notes).toMatchObject([
      { code: 'footprint.crosses', subject: 'Bow tie', path: ['way/5', 'outline', 0] },
    ]);
  });

  test('that all cross themselves refuse the file, with the name and the corners', () => {
    const bow = [at(0, 0), at(10, 10), at(10, 0), at(0, 10), at(0, 0)];
    const fault = faultOf(collection(polygon([bow], { building: 'yes', name: 'Bow tie' })));
    expect(fault).toMatchObject({ code: 'footprint.crosses', subject: 'Bow tie' });
    expect(fault?.given).toMatch(/corners \d to \d/);
  });

  test('that are ten kilometres wide are left out by name', () => {
    const { report, notes } = found(
      polygon([square(0, 0, 10_000)], { building: 'yes', name: 'Hangar' }),
      polygon([square(0, 0, 9)]),
    );
    expect(report.left).toContainEqual({ code: 'left.far', count: 1, names: ['Hangar'] });
    expect(notes).toMatchObject([{ code: 'structure.vast', subject: 'Hangar' }]);
  });

  test('with coordinates of 1e308 are left out by name, and the others stay', () => {
    const far = square(0, 0, 10);
    far[2] = [1e308, 0];
    const { structures, report } = found(
      polygon([far], { building: 'yes' }, 'way/9'),
      polygon([square(0, 0, 9)]),
    );
    expect(structures).toHaveLength(1);
    expect(report.left).toContainEqual({ code: 'left.notOnEarth', count: 1, names: ['way/9'] });
  });

  test('come to the millimetre, finer than any map', () => {
    const { outline } = building(polygon([square(0, 0, 10)]));
    for (const value of outline.flat()) expect(value * 1000).toBeCloseTo(Math.round(value * 1000), 6);
  });

  test('two buildings that share a wall still share its corners to the bit', () => {
    const { structures } = found(polygon([square(0, 0, 10)]), polygon([square(10, 0, 10)]));
    const [one, two] = structures.map((structure) =>
      'outline' in structure ? structure.outline.map(String) : [],
    );
    expect(one?.filter((corner) => two?.includes(corner))).toHaveLength(2);
  });
});

describe('a map with nothing to build', () => {
  test.each([
    ['geojson.empty', { type: 'FeatureCollection', features: [] }],
    ['value.missing', { type: 'FeatureCollection' }],
    [
      'geojson.pointsOnly',
      collection(
        feature({ type: 'Point', coordinates: [1, 2] }, {}),
        feature({ type: 'MultiPoint', coordinates: [[1, 2]] }, {}),
      ),
    ],
    ['geojson.pointsOnly', { type: 'Point', coordinates: [1, 2] }],
    [
      'geojson.noBuildings',
      collection(
        feature(
          {
            type: 'LineString',
            coordinates: [
              [1, 2],
              [1, 3],
            ],
          },
          { highway: 'path' },
        ),
      ),
    ],
    ['geojson.noBuildings', collection(polygon([square(0, 0, 9)], { landuse: 'grass' }, 'way/1'))],
    [
      'geojson.unreadable',
      collection({ type: 'Feature', geometry: { type: 'Polygon', coordinates: 'none' } }, 7, null),
    ],
    [
      'geojson.projected',
      collection(
        polygon([
          [
            [530207, 179366],
            [530304, 179354],
            [530300, 179400],
            [530207, 179366],
          ],
        ]),
      ),
    ],
    ['geojson.spread', collection(polygon([square(0, 0, 9)]), polygon([square(900_000, 0, 9)]))],
    [
      'geojson.crs',
      {
        ...collection(polygon([square(0, 0, 9)])),
        crs: { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::27700' } },
      },
    ],
    ['file.unknown', { type: 'Topology' }],
  ])('is refused: %s', (code, document) => {
    const fault = faultOf(document);
    expect(fault?.code).toBe(code);
    expect(faultText(fault ?? { code: '', path: [] })).toMatch(/^[A-Z“].*\.$/);
  });

  test('names the coordinate system that says longitude and latitude in older words as well', () => {
    for (const name of ['urn:ogc:def:crs:OGC:1.3:CRS84', 'EPSG:4326', 'urn:ogc:def:crs:EPSG::4326'])
      expect(
        finish(
          importGeojson({
            ...collection(polygon([square(0, 0, 9)])),
            crs: { type: 'name', properties: { name } },
          }),
        ).ok,
      ).toBe(true);
  });
});

test('a file of plain outlines without tags is one of buildings, and says so', () => {
  const { structures, report, credits } = found(
    polygon([square(0, 0, 9)], { height: 7.5 }),
    polygon([square(20, 0, 9)], {}),
  );
  expect(structures).toMatchObject([
    { height: 7.5, got: { height: 'mapped' } },
    { height: 6, got: { height: 'guessed' } },
  ]);
  expect(report.assumed).toContainEqual({ code: 'assumed.plain', count: 2, names: [] });
  expect(credits).toEqual([]);
});

test('the head of a file is credited where it says whom', () => {
  const document = { ...collection(polygon([square(0, 0, 9)])), attribution: 'Town survey, CC BY 4.0' };
  const outcome = finish(importGeojson(document));
  expect(outcome.ok && outcome.value.credits).toEqual(['Town survey, CC BY 4.0']);
});

test('an origin that is given is kept: what is imported twice falls on itself', () => {
  const origin = { latitude: 0, longitude: 20, trueNorth: 0 };
  const outcome = finish(importGeojson(collection(polygon([square(100, 50, 10)])), origin));
  if (!outcome.ok) throw new Error('refused');
  expect(outcome.value.origin).toEqual(origin);
  const structure = only(outcome.value.structures);
  expect(
    'outline' in structure &&
      structure.outline.some(([x, y]) => Math.abs(x - 100) < 0.01 && Math.abs(y - 50) < 0.01),
  ).toBe(true);
});

test('names and addresses are plain text of one line', () => {
  const name = '<script>alert(1)</script>\u0007';
  expect(building(polygon([square(0, 0, 9)], { building: 'yes', name })).name).toBe(
    '<script>alert(1)</script>',
  );
  expect(
    building(
      polygon([square(0, 0, 9)], { building: 'yes', 'addr:housenumber': '7', 'addr:street': 'Kiln Lane' }),
    ).name,
  ).toBe('7 Kiln Lane');
  expect(building(polygon([square(0, 0, 9)])).name).toBe('Building 1');
});

test('a long import can be called off between any 200 features', () => {
  const many = Array.from({ length: 1000 }, (_, index) => polygon([square(index * 12, 0, 10)]));
  const steps = importGeojson(collection(...many));
  const shares: number[] = [];
  for (let next = steps.next(); !next.done; next = steps.next()) shares.push(next.value.share);
  expect(shares.length).toBeGreaterThanOrEqual(10);
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
});

test('every outcome is one: no feature throws', () => {
  const odd: unknown[] = [
    null,
    {},
    { type: 'Feature' },
    { type: 'Feature', geometry: null },
    feature({ type: 'Polygon', coordinates: [] }),
    feature({ type: 'Polygon', coordinates: [[]] }),
    feature({ type: 'Polygon', coordinates: [[at(0, 0)]] }),
    feature({ type: 'Polygon', coordinates: [[at(0, 0), at(0, 0), at(0, 0), at(0, 0)]] }),
    feature({ type: 'LineString', coordinates: [] }, { barrier: 'wall' }),
    feature({ type: 'LineString', coordinates: [at(0, 0)] }, { barrier: 'hedge' }),
    feature({ type: 'GeometryCollection', geometries: [] }),
    feature({
      type: 'Polygon',
      coordinates: [
        [
          [0, 0, 5],
          [0, 'x'],
          [1, 1],
        ],
      ],
    }),
    { type: 'Feature', id: {}, properties: 'none', geometry: { type: 'Point', coordinates: [1] } },
  ];
  const { structures } = found(...odd, polygon([square(0, 0, 9)]));
  expect(structures).toHaveLength(1);
  for (const one of odd) expect(imported(one).ok).toBe(false);
});
