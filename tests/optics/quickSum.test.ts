import { describe, expect, test } from 'vitest';
import { densityAt } from '../../src/optics/density.ts';
import { distanceFor, focalLengthFor, quickSum, reachOf, type SumAsked } from '../../src/optics/quickSum.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

const asked = (given: Partial<SumAsked> = {}): SumAsked => ({
  height: 3,
  targetHeight: 1.6,
  distance: 6,
  sensor: { width: 4.8, height: 2.7 },
  frame: { width: 2560, height: 1440 },
  lens: { focalLength: 4, hfov: null },
  tilt: null,
  roll: 0,
  ...given,
});

/** Level with its target, so that ranges along the axis are distances. */
const level = (given: Partial<SumAsked>): SumAsked => asked({ height: 1.6, ...given });

describe('ranges of bands from the pinhole formula, N / (2 d tan(HFOV/2)), computed by hand', () => {
  const BANDS = [250, 125, 62.5, 25, 12.5];
  test.each([
    [90, [5.12, 10.24, 20.48, 51.2, 102.4]],
    [60, [8.868, 17.736, 35.472, 88.681, 177.362]],
    [45, [12.361, 24.722, 49.443, 123.608, 247.215]],
    [25, [23.095, 46.19, 92.379, 230.948, 461.897]],
  ])('2560 px over %d°', (hfov, ranges) => {
    const from = level({ lens: { focalLength: null, hfov }, tilt: 0 });
    BANDS.forEach((band, at) => {
      const wanted = ranges[at] ?? Number.NaN;
      expect(Math.abs((reachOf(quickSum(from), band) ?? 0) - wanted)).toBeLessThan(6e-4);
      expect(Math.abs(Number(distanceFor(from, band)) - wanted)).toBeLessThan(6e-4);
      expect(quickSum({ ...from, distance: wanted }).density).toBeCloseTo(band, 1);
    });
  });

  test.each([
    [2.8, [59.733, 23.893, 11.947, 5.973]],
    [4, [85.333, 34.133, 17.067, 8.533]],
    [6, [128, 51.2, 25.6, 12.8]],
    [12, [256, 102.4, 51.2, 25.6]],
  ])('a %d mm lens before 4.8 mm, and back to the lens from range and px/m', (focalLength, ranges) => {
    const from = level({ lens: { focalLength, hfov: null }, tilt: 0 });
    [25, 62.5, 125, 250].forEach((band, at) => {
      const distance = ranges[at] ?? Number.NaN;
      expect(Math.abs((reachOf(quickSum(from), band) ?? 0) - distance)).toBeLessThan(6e-4);
      expect(focalLengthFor({ ...from, distance }, band)).toBeCloseTo(focalLength, 2);
    });
  });
});

test('pixels across a face of 16 cm at the levels of the 2014 edition, as a public page has them', () => {
  for (const [band, pixels] of [
    [25, 4],
    [62.5, 10],
    [125, 20],
    [250, 40],
  ] as const) {
    const distance = Number(distanceFor(asked(), band));
    expect(quickSum(asked({ distance })).face).toBeCloseTo(pixels, 9);
  }
});

test('degrees from above to a face at 1.6 m, atan((h − 1.6)/d) by hand', () => {
  const rows = [
    [2.4, [21.801, 14.931, 11.31, 7.595, 4.574]],
    [3, [34.992, 25.017, 19.29, 13.134, 7.97]],
    [3.5, [43.531, 32.347, 25.408, 17.571, 10.758]],
    [4, [50.194, 38.66, 30.964, 21.801, 13.496]],
  ] as const;
  for (const [height, angles] of rows)
    [2, 3, 4, 6, 10].forEach((distance, at) => {
      const sum = quickSum(asked({ height, distance }));
      expect(Math.abs(sum.above - (angles[at] ?? 0))).toBeLessThan(5.01e-4);
      // Turned to its target, the axis has the same depression.
      expect(sum.camera.tilt).toBe(sum.above);
    });
});

describe('nearest and farthest that lies in the picture: (H − z)/tan(tilt ± V/2), by hand', () => {
  const rows = [
    [3, 30, 45, 0, 2.302, 22.7873],
    [3, 30, 45, 1.6, 1.0743, 10.6341],
    [2.6, 20, 33.4, 1.6, 1.3416, 17.3432],
    [3, 25, 33.4, 0, 3.3671, 20.5643],
    [3.5, 15, 27.53, 0, 6.3757, 162.3516],
    [4, 20, 40.36, 0, 4.7367, Infinity],
  ] as const;
  test.each(rows)(
    '%d m up, tilt %d°, %d° high, target %d m',
    (height, tilt, vfov, targetHeight, from, to) => {
      const focalLength = 1.35 / Math.tan((vfov * Math.PI) / 360);
      const { stretch } = quickSum(asked({ height, tilt, targetHeight, lens: { focalLength, hfov: null } }));
      expect(stretch?.from).toBeCloseTo(from, 4);
      // 162 m is read off a tangent near nought: half a unit of its last digit is 5e-5.
      const found = stretch?.to ?? Number.NaN;
      expect(found === to || Math.abs(found - to) < 5.01e-5).toBe(true);
    },
  );

  test('a target above the lens is the same in a mirror; level with it, the whole line or none of it', () => {
    const up = quickSum(asked({ height: 1.6, targetHeight: 4.6, tilt: -30 })).stretch;
    const down = quickSum(asked({ height: 4.6, targetHeight: 1.6, tilt: 30 })).stretch;
    expect(up).toEqual(down);
    expect(quickSum(level({ tilt: 0 })).stretch).toEqual({ from: 0, to: Infinity });
    expect(quickSum(level({ tilt: 60 })).stretch).toBeNull();
    expect(quickSum(asked({ tilt: -60 })).stretch).toBeNull();
    expect(quickSum(asked({ tilt: 80 })).stretch?.from).toBe(0);
  });
});

test('px/m of a tilted photograph: f cos t / H, f / H at the isocentre, f / (H cos t) (Wolf and Dewitt, from memory)', () => {
  // f 4 mm of 4.8 mm and 2560 px is 2133.333 px; H 3.2 m. Depressions 35 and 62.5°; the nadir has no distance.
  const ground = (depression: number) => 3.2 / Math.tan((depression * Math.PI) / 180);
  for (const [depression, density] of [
    [35, 382.384],
    [62.5, 666.667],
  ] as const)
    expect(
      quickSum(asked({ height: 3.2, targetHeight: 0, tilt: 35, distance: ground(depression) })).density,
    ).toBeCloseTo(density, 3);
});

describe('the practitioner’s rule for 4 megapixels on a third-inch sensor (common practice, no source)', () => {
  const RULE = [
    [2.8, 90],
    [4, 60],
    [6, 45],
    [12, 25],
  ] as const;

  test('by focal length alone angles lie within its 10°', () => {
    for (const [focalLength, hfov] of RULE)
      expect(
        Math.abs((quickSum(asked({ lens: { focalLength, hfov: null } })).hfov ?? 0) - hfov),
      ).toBeLessThan(10);
  });

  test('what is left is the bend of the lens in two rows, and a contradiction in the others', () => {
    const told = RULE.map(([focalLength, hfov]) => quickSum(asked({ lens: { focalLength, hfov } })));
    // k by hand from f · g(HFOV/2; k) = 2.4 mm; nearest focal lengths likewise.
    expect(told[0]?.camera.k).toBeCloseTo(0.63272, 5);
    expect(told[2]?.camera.k).toBeCloseTo(0.59479, 5);
    expect(told.map(({ contradicts }) => contradicts?.toFixed(4) ?? null)).toEqual([
      null,
      '4.1569',
      null,
      '11.0885',
    ]);
    // Where a law is found, the sum has the printed angle.
    expect(told[0]?.hfov).toBeCloseTo(90, 9);
  });

  test('a bent lens has fewer px/m in its middle than the flat formula of its printed angle says', () => {
    const bent = quickSum(level({ lens: { focalLength: 2.8, hfov: 90 }, tilt: 0 })).density ?? 0;
    const flat = quickSum(level({ lens: { focalLength: null, hfov: 90 }, tilt: 0 })).density ?? 0;
    // f over the pixel and the distance; by hand 2.8 · 2560 / 4.8 / 6 against 2560 / 12.
    expect(bent).toBeCloseTo(248.889, 3);
    expect(flat).toBeCloseTo(213.333, 3);
  });
});

describe('width of view', () => {
  test('of a straight lens turned to its target is the slant distance times width over focal length', () => {
    const { width } = quickSum(asked());
    expect(width).toBeCloseTo((Math.hypot(6, 1.4) * 4.8) / 4, 9);
  });

  test('of a straight lens with another tilt goes by the depth along the axis', () => {
    const tilt = 30;
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    expect(quickSum(asked({ tilt })).width).toBeCloseTo(((6 * c + 1.4 * s) * 4.8) / 4, 9);
  });

  test('of an even fisheye of 180° has no end, of 160° it is twice the tangent of 80°', () => {
    const fisheye = (hfov: number) => level({ lens: { focalLength: null, hfov }, tilt: 0 });
    expect(quickSum(fisheye(180)).width).toBeNull();
    expect(quickSum(fisheye(160)).width).toBeCloseTo(12 * Math.tan((80 * Math.PI) / 180), 6);
  });

  test('ends where the line leaves a turned picture above, before it reaches the side', () => {
    // The line crosses the picture at 60°: half the sensor's height over sin 60° from its middle each way.
    const wide = (Math.hypot(6, 1.4) * 2.7) / Math.sin(Math.PI / 3) / 4;
    expect(quickSum(asked({ roll: 60 })).width).toBeCloseTo(wide, 9);
  });

  test('is not told of what lies beside the picture', () => {
    expect(quickSum(asked({ tilt: 80 }))).toMatchObject({ seen: false, width: null });
  });

  test('on its side a picture is as wide as its sensor is high', () => {
    expect(quickSum(asked({ roll: 90 })).width).toBeCloseTo((Math.hypot(6, 1.4) * 2.7) / 4, 9);
  });
});

test('px/m asked for are had at the distance found, for any lens, height and tilt, and beyond it nowhere', () => {
  const chance = chanceFrom(71);
  let found = 0;
  for (let trial = 0; trial < trials(60, 3000); trial += 1) {
    const hfov = chance.between(20, 175);
    const from = asked({
      height: chance.between(0.3, 9),
      targetHeight: chance.between(0, 3),
      distance: chance.between(0.5, 40),
      lens: chance.pick([
        { focalLength: null, hfov },
        { focalLength: chance.between(1.5, 15), hfov: null },
        { focalLength: 2.8, hfov: chance.between(82, 100) },
      ]),
      tilt: chance.pick([null, chance.between(-30, 85)]),
    });
    const wanted = chance.between(5, 600);
    const distance = distanceFor(from, wanted);
    if (typeof distance === 'string') continue;
    const sum = quickSum({ ...from, distance });
    expect(sum.density).toBeCloseTo(wanted, 4);
    const reach = reachOf(sum, wanted);
    const isFixed = sum.seen && from.tilt !== null;
    expect(isFixed ? reach : distance).toBeCloseTo(distance, 6);
    // Farther off there are fewer.
    for (let share = 1.001; share < 50; share *= 1.5) {
      const { height } = from;
      const there = densityAt({ ...sum.camera, eye: [0, 0, height] }, [
        0,
        distance * share,
        from.targetHeight,
      ]);
      expect(there?.horizontal ?? 0).toBeLessThan(wanted);
    }
    found += 1;
  }
  expect(found).toBeGreaterThan(trials(60, 3000) / 2);
});

test('says when there is no answer', () => {
  expect(distanceFor(asked({ height: 9 }), 3000)).toBe('never so many');
  expect(distanceFor(asked({ height: 9, tilt: 20 }), 3000)).toBe('never so many');
  expect(distanceFor(asked(), 1e-6)).toBe('always more');
  expect(focalLengthFor(asked({ tilt: -89 }), 125)).toBeNull();
  expect(reachOf(quickSum(asked({ tilt: 80 })), 3000)).toBeNull();
  expect(() => quickSum(asked({ distance: 0 }))).toThrow(RangeError);
  expect(() => quickSum(asked({ lens: { focalLength: null, hfov: null } }))).toThrow(RangeError);
});
