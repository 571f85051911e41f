import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import sensors from '../../../shared/tables/sensors.json';
import { angleOfView, radius, solveK } from '../../../src/optics/lens.ts';
import { lawOf } from '../../../src/optics/setting.ts';
import { FOCAL_LENGTHS, FORMATS } from './formats.ts';

const HALF_HUNDREDTH = 0.00501;

describe('fields of view of the formats, 2 atan(w / 2f), to half a unit of the last digit', () => {
  for (const { name, size, views } of FORMATS)
    test(`format ${name}`, () => {
      FOCAL_LENGTHS.forEach((focalLength, at) => {
        const [hfov, vfov] = views[at] ?? [Number.NaN, Number.NaN];
        const found = size.map((side) => angleOfView(focalLength, 1, side) ?? Number.NaN);
        expect(Math.abs((found[0] ?? 0) - hfov), `${focalLength} mm`).toBeLessThan(HALF_HUNDREDTH);
        expect(Math.abs((found[1] ?? 0) - vfov), `${focalLength} mm`).toBeLessThan(HALF_HUNDREDTH);
      });
    });

  test('our own list of sensors has the listed sizes', () => {
    const list = z
      .array(z.object({ key: z.string(), width: z.number(), height: z.number() }))
      .parse(sensors.sensors);
    for (const { key, size } of FORMATS)
      expect(list.find((one) => one.key === key)).toMatchObject({ width: size[0], height: size[1] });
  });

  test('a sensor of 1920 × 1080 pixels of 2.9 µm, unrounded', () => {
    expect(angleOfView(2.8, 1, 1920 * 0.0029)).toBeCloseTo(89.67, 2);
    expect(angleOfView(2.8, 1, 1080 * 0.0029)).toBeCloseTo(58.44, 2);
  });
});

// Common practice, no source: the rule for a 4-megapixel camera with a third-inch sensor, 4.8 mm wide.
const RULE = [
  [2.8, 90],
  [4, 60],
  [6, 45],
  [12, 25],
] as const;

describe('the practitioner’s rule for a third-inch sensor (common practice, no source)', () => {
  test('is met within 10° by a rectilinear lens', () => {
    for (const [focalLength, hfov] of RULE)
      expect(Math.abs((angleOfView(focalLength, 1, 4.8) ?? 0) - hfov), `${focalLength} mm`).toBeLessThan(10);
  });

  /** k where a law is found; else the nearest focal length, with the law of that end. */
  const told = (focalLength: number, hfov: number, width: number): readonly [string, number] => {
    const found = solveK(focalLength, hfov, width);
    return found.consistent ? ['k', found.k] : [`k ${found.k} at mm`, found.nearestFocalLength];
  };
  const expectRow = (
    width: number,
    row: readonly number[],
    [what, number]: readonly [string, number],
  ): void => {
    const [name, found] = told(row[0] ?? 0, row[1] ?? 0, width);
    expect(name).toBe(what);
    expect(Math.abs(found - number), `${row.join(' mm / ')}°`).toBeLessThan(what === 'k' ? 5.01e-6 : 5.01e-5);
  };

  // Computed by solving f · g(HFOV/2; k) = w/2 for w = 4.8 mm, and for 5.23 mm (16:9, 6 mm diagonal).
  test('on 4.8 mm has a law in two rows of four and contradicts that sensor in the others', () => {
    expectRow(4.8, RULE[0], ['k', 0.63272]);
    // 0.60000 lies above tan 30° = 0.57735.
    expectRow(4.8, RULE[1], ['k 1 at mm', 4.1569]);
    expectRow(4.8, RULE[2], ['k', 0.59479]);
    // 0.20000 lies below sin 12.5° = 0.21644.
    expectRow(4.8, RULE[3], ['k -1 at mm', 11.0885]);
  });

  test('on 5.23 mm has other laws and other contradictions', () => {
    expectRow(5.23, RULE[0], ['k', 0.86563]);
    expectRow(5.23, RULE[1], ['k 1 at mm', 4.5293]);
    expectRow(5.23, RULE[2], ['k 1 at mm', 6.3132]);
    expectRow(5.23, RULE[3], ['k', -0.37975]);
  });

  // The focal lengths from k = 1 to k = −1 that fit, as printed.
  const FITTING = [
    { width: 4.8, hfov: 60, from: 4.1569, to: 4.8 },
    { width: 4.8, hfov: 25, from: 10.8257, to: 11.0885 },
    { width: 5.23, hfov: 60, from: 4.5293, to: 5.23 },
    { width: 5.23, hfov: 45, from: 6.3132, to: 6.8333 },
  ] as const;
  test.each(FITTING)(
    '$hfov° over $width mm is had from $from to $to mm and no further',
    ({ width, hfov, from, to }) => {
      const last = 1e-4;
      const fits = [from - last, from + last, to - last, to + last].map(
        (f) => solveK(f, hfov, width).consistent,
      );
      expect(fits).toEqual([false, true, true, false]);
    },
  );

  test('as data sheets: the two contradictions are reported with what would be consistent', () => {
    const faults = RULE.map(([focalLength, hfov]) =>
      lawOf(
        {
          shortest: focalLength,
          longest: focalLength,
          focalLength,
          statedHfov: { atShortest: hfov, atLongest: hfov },
          statedVfov: null,
          statedIn: null,
          fNumber: null,
        },
        4.8,
        'C1',
      ).faults.map(({ code, allowed }) => `${code} ${allowed}`),
    );
    expect(faults).toEqual([[], ['lens.inconsistent 4.16 mm'], [], ['lens.inconsistent 11.09 mm']]);
  });
});

// Computed from f · g(90°) = 2.4 mm.
describe('the lens that fills 4.8 mm with 180°', () => {
  const rows = [
    ['equidistant', 0, 1.527887],
    ['stereographic', 0.5, 1.2],
    ['equisolid-angle', -0.5, 1.697056],
    ['orthographic', -1, 2.4],
  ] as const;
  test.each(rows)('%s', (_name, k, focalLength) => {
    expect(Math.abs((radius(focalLength, k, 90) ?? 0) - 2.4)).toBeLessThan(1e-6);
    const found = solveK(focalLength, 180, 4.8);
    expect(found.consistent).toBe(true);
    // Around k = 0 the law hardly moves g: six digits of focal length tell k to about a thousandth.
    expect(Math.abs(found.k - k)).toBeLessThan(k === 0 ? 2e-3 : 2e-6);
  });
});
