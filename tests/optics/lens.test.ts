import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  angleOfRadius,
  angleOfView,
  greatestAngleRad,
  hasImageRad,
  lawRad,
  lawSlopeRad,
  radius,
  solveK,
} from '../../src/optics/lens.ts';
import { trials } from '../house/seeded.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
// A law below 1e-12 is 0 to the last digit; far below, products with it are no longer numbers of full length.
const law = fc.double({ min: -1, max: 1, noNaN: true }).map((k) => (Math.abs(k) < 1e-12 ? 0 : k));

describe('the lens law', () => {
  test('gives the five classical projections in their usual form', () => {
    for (let angle = 0; angle < 90; angle += 7.5) {
      const theta = rad(angle);
      expect(radius(3, 1, angle)).toBeCloseTo(3 * Math.tan(theta), 12);
      expect(radius(3, 0.5, angle)).toBeCloseTo(6 * Math.tan(theta / 2), 12);
      expect(radius(3, 0, angle)).toBeCloseTo(3 * theta, 12);
      expect(radius(3, -0.5, angle)).toBeCloseTo(6 * Math.sin(theta / 2), 12);
      expect(radius(3, -1, angle)).toBeCloseTo(3 * Math.sin(theta), 12);
    }
  });

  test('has no image of a ray past its greatest angle', () => {
    expect(radius(3, 1, 89.999)).toBeGreaterThan(1e5);
    expect([radius(3, 1, 90), radius(3, 1, 135), radius(3, 0.5, 180)]).toEqual([null, null, null]);
    expect(radius(3, 0, 180)).toBeCloseTo(3 * Math.PI, 12);
    expect(radius(3, -1, 90)).toBeCloseTo(3, 12);
    expect(radius(3, -1, 90.001)).toBe(null);
    expect(radius(3, -0.5, 180)).toBeCloseTo(6, 12);
    expect(radius(3, -0.75, 120.001)).toBe(null);
  });

  test('has no ray at a radius past its greatest', () => {
    expect(angleOfRadius(3, 0, 3 * Math.PI * 1.0001)).toBe(null);
    expect(angleOfRadius(3, -0.5, 6.0001)).toBe(null);
    expect(angleOfRadius(3, -1, 3.0001)).toBe(null);
    expect(angleOfRadius(3, 0.3, (3 * Math.tan(0.3 * Math.PI)) / 0.3 + 0.001)).toBe(null);
    // sin(0.3 · 200°) lies within the sine's reach, 200° beyond the circle's.
    expect(angleOfRadius(3, -0.3, (3 * Math.sin(rad(0.3 * 200))) / 0.3)).toBe(null);
    expect(angleOfRadius(3, 1, 1e6)).toBeCloseTo(90, 3);
  });

  test('has a ray at just its greatest radius, where the law has an end', () => {
    expect(angleOfRadius(3, 0, 3 * Math.PI)).toBeCloseTo(180, 12);
    expect(angleOfRadius(3, -0.5, 6)).toBeCloseTo(180, 12);
    expect(angleOfRadius(3, -1, 3)).toBeCloseTo(90, 12);
  });

  test('and its inverse undo each other', () => {
    fc.assert(
      fc.property(law, fc.double({ min: 0, max: 0.995, noNaN: true }), (k, share) => {
        const angle = (share * greatestAngleRad(k) * 180) / Math.PI;
        const mm = radius(2.8, k, angle);
        expect(mm).not.toBe(null);
        expect(angleOfRadius(2.8, k, mm ?? -1)).toBeCloseTo(angle, 8);
      }),
      { seed: 61, numRuns: trials(500, 20_000) },
    );
  });

  test('rises with the angle, and with k at every angle', () => {
    fc.assert(
      fc.property(law, law, fc.double({ min: 0.05, max: 0.99, noNaN: true }), (one, two, share) => {
        const [low, high] = [Math.min(one, two), Math.max(one, two)];
        fc.pre(high - low > 1e-3);
        const theta = share * Math.min(greatestAngleRad(low), greatestAngleRad(high));
        expect(lawRad(theta, high)).toBeGreaterThan(lawRad(theta, low));
        expect(lawRad(theta, low)).toBeGreaterThan(lawRad(theta * 0.98, low));
      }),
      { seed: 61, numRuns: trials(500, 20_000) },
    );
  });

  test('has the slope that its own differences have', () => {
    for (const k of [1, 0.7, 0.5, 1e-4, 0, -1e-4, -0.5, -1])
      for (const share of [0.05, 0.4, 0.8]) {
        const theta = share * greatestAngleRad(k);
        const step = 1e-5;
        const slope = (lawRad(theta + step, k) - lawRad(theta - step, k)) / (2 * step);
        expect(Math.abs(lawSlopeRad(theta, k) / slope - 1)).toBeLessThan(1e-7);
      }
  });

  test('goes over from k above 0 to k below 0 without a step', () => {
    for (const theta of [0.3, 1, 2, 3])
      for (const k of [1e-7, -1e-7]) expect(lawRad(theta, k)).toBeCloseTo(lawRad(theta, 0), 12);
  });

  test('ends where its domain ends', () => {
    expect(greatestAngleRad(1)).toBeCloseTo(rad(90), 14);
    expect(greatestAngleRad(0.75)).toBeCloseTo(rad(120), 14);
    expect(greatestAngleRad(0.4)).toBeCloseTo(rad(180), 14);
    expect(greatestAngleRad(0)).toBeCloseTo(rad(180), 14);
    expect(hasImageRad(rad(90), 1)).toBe(false);
    expect(hasImageRad(rad(90), -1)).toBe(true);
  });
});

describe('the angle of view of a sensor side', () => {
  test('is twice the angle at half the side', () => {
    expect(angleOfView(2.4, 1, 4.8)).toBeCloseTo(90, 12);
    expect(angleOfView(2.4, 0, 4.8)).toBeCloseTo((2 * 180) / Math.PI, 12);
  });

  test('is none where the law ends inside the sensor', () => {
    expect(angleOfView(2.4, -1, 4.80001)).toBe(null);
    expect(angleOfView(1.5, 0, 10)).toBe(null);
  });
});

describe('the law solved from a stated angle of view', () => {
  test('is a law that gives that angle, and the one it was made from', () => {
    fc.assert(
      fc.property(
        law,
        fc.double({ min: 0.2, max: 0.98, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        (k, share, focalLength) => {
          const half = (share * greatestAngleRad(k) * 180) / Math.PI;
          const width = 2 * (radius(focalLength, k, half) ?? 0);
          const found = solveK(focalLength, 2 * half, width);
          expect(found.consistent, `k ${k}, half ${half}`).toBe(true);
          expect(angleOfView(focalLength, found.k, width)).toBeCloseTo(2 * half, 6);
          // g is flat in k around 0, where k is known to about the root of the rounding only.
          expect(Math.abs(found.k - k)).toBeLessThan(1e-6);
        },
      ),
      { seed: 61, numRuns: trials(500, 20_000) },
    );
  });

  test('is an end law where the sheet states just its angle', () => {
    expect(solveK(2.4, 90, 4.8)).toEqual({ consistent: true, k: 1 });
    expect(solveK(2.4, 180, 4.8)).toEqual({ consistent: true, k: -1 });
    // Wider than any law allows by less than rounding: still no law beyond the last.
    expect(solveK(2.4, 90, 4.8 * (1 + 5e-10))).toMatchObject({
      consistent: true,
      k: expect.closeTo(1, 12) as unknown,
    });
    for (let hfov = 5; hfov < 175; hfov += 1.7) {
      const half = rad(hfov / 2);
      expect(solveK(2.4 / Math.tan(half), hfov, 4.8), `${hfov}`).toMatchObject({ consistent: true });
      expect(solveK(2.4 / Math.sin(half), hfov, 4.8), `${hfov}`).toMatchObject({ consistent: true });
    }
  });

  test('is refused where no law gives it, with the nearest focal length of a law that does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 170, noNaN: true }),
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        fc.double({ min: 3, max: 12, noNaN: true }),
        (hfov, stretch, width) => {
          const half = rad(hfov / 2);
          const [shortest, longest] = [width / 2 / Math.tan(half), width / 2 / Math.sin(half)];
          const focalLength = shortest * stretch;
          fc.pre(focalLength < shortest * 0.999 || focalLength > longest * 1.001);
          const found = solveK(focalLength, hfov, width);
          expect(found.consistent).toBe(false);
          if (found.consistent) return;
          expect(found.nearestFocalLength).toBeCloseTo(focalLength < shortest ? shortest : longest, 9);
          expect(found.k).toBe(focalLength < shortest ? 1 : -1);
          expect(
            solveK(found.nearestFocalLength * (focalLength < shortest ? 1 + 1e-9 : 1 - 1e-9), hfov, width)
              .consistent,
          ).toBe(true);
        },
      ),
      { seed: 61, numRuns: trials(300, 10_000) },
    );
  });

  test('keeps to laws whose domain holds a wide angle', () => {
    // 200°: |k| · 100° ≤ 90°, so k ≥ −0.9, where g = 1 / 0.9.
    const found = solveK(10, 200, 4.8);
    expect(found.consistent).toBe(false);
    expect(found.k).toBeCloseTo(-0.9, 12);
    expect(found.consistent ? 0 : found.nearestFocalLength).toBeCloseTo(2.4 * 0.9, 9);
    const fits = solveK(1.2, 200, 4.8);
    expect(fits.consistent).toBe(true);
    expect(angleOfView(1.2, fits.k, 4.8)).toBeCloseTo(200, 8);
  });

  test('throws on numbers that are no lens', () => {
    for (const bad of [Number.NaN, 0, -1, Infinity]) {
      expect(() => solveK(bad, 90, 4.8)).toThrow(RangeError);
      expect(() => solveK(2.8, bad, 4.8)).toThrow(RangeError);
      expect(() => solveK(2.8, 90, bad)).toThrow(`${bad}`);
    }
  });
});
