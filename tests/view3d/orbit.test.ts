import { describe, expect, test } from 'vitest';
import { distance, type Vec3 } from '../../src/base/vector.ts';
import {
  between,
  eyeOf,
  fitBox,
  heightShown,
  restingElevation,
  slideBy,
  turnAbout,
  zoomAbout,
  zoomLimits,
  type Orbit,
} from '../../src/view3d/orbit.ts';
import { sheetOf } from '../../src/view3d/sheet.ts';
import { chanceFrom } from '../house/seeded.ts';

const home: Orbit = { pivot: [3, -2, 0], bearing: 342, elevation: 41, distance: 90 };
const spotOf = (orbit: Orbit, point: Vec3) => {
  const spot = sheetOf(orbit, 1000, 700).spotFromSite(point);
  if (!spot) throw new Error('behind the eye');
  return spot;
};

describe('the view', () => {
  test('north is up, and to the right when one looks west of it', () => {
    const [at, north] = [spotOf(home, [0, 0, 0]), spotOf(home, [0, 5, 0])];
    expect(north.y).toBeLessThan(at.y);
    expect(north.x).toBeGreaterThan(at.x);
  });

  test('a turn leaves the point under the press where it was (seed 7)', () => {
    const chance = chanceFrom(7);
    for (let i = 0; i < 100; i += 1) {
      const about: Vec3 = [chance.between(-8, 8), chance.between(-8, 8), chance.between(0, 3)];
      const before = spotOf(home, about);
      const after = spotOf(turnAbout(home, about, chance.between(-180, 180), chance.between(-90, 90)), about);
      expect(after.x).toBeCloseTo(before.x, 6);
      expect(after.y).toBeCloseTo(before.y, 6);
    }
  });

  test('a zoom leaves the point under the pointer where it was, and shows as much less as asked', () => {
    const about: Vec3 = [5, 4, 1];
    const before = spotOf(home, about);
    const nearer = zoomAbout(home, about, 1.15, zoomLimits(40));
    expect(spotOf(nearer, about).x).toBeCloseTo(before.x, 6);
    expect(spotOf(nearer, about).y).toBeCloseTo(before.y, 6);
    expect(heightShown(home) / heightShown(nearer)).toBeCloseTo(1.15, 9);
  });

  test('zoom ends at a metre and at four times the site’s diagonal', () => {
    expect(heightShown(zoomAbout(home, [0, 0, 0], 1e6, zoomLimits(40)))).toBeCloseTo(1, 9);
    expect(heightShown(zoomAbout(home, [0, 0, 0], 1e-6, zoomLimits(40)))).toBeCloseTo(160, 6);
  });

  test('elevation stays within −25° and 90°', () => {
    expect(turnAbout(home, [0, 0, 0], 0, 500).elevation).toBe(90);
    expect(turnAbout(home, [0, 0, 0], 0, -500).elevation).toBe(-25);
  });

  test.each([
    [2, 0],
    [-2.9, 0],
    [39, 41],
    [44, 41],
    [87.5, 90],
    [60, 60],
    [-10, -10],
  ])('let go at %f° it rests at %f°', (from, to) => {
    expect(restingElevation(from)).toBe(to);
  });

  test('a fit shows every corner of the box, and fills the window one way', () => {
    for (const [elevation, bearing, aspect] of [
      [41, 342, 1.6],
      [90, 0, 0.6],
      [0, 45, 2],
      [-20, 200, 1],
    ] as const) {
      const orbit = fitBox(
        { ...home, elevation, bearing },
        { low: [-12, -9, -0.34], high: [18, 9, 6] },
        aspect,
        0.05,
      );
      const sheet = sheetOf(orbit, 600 * aspect, 600);
      const spots = [-12, 18].flatMap((x) =>
        [-9, 9].flatMap((y) => [-0.34, 6].map((z) => sheet.spotFromSite([x, y, z]))),
      );
      const xs = spots.map((spot) => (spot ? spot.x / (600 * aspect) : Number.NaN));
      const ys = spots.map((spot) => (spot ? spot.y / 600 : Number.NaN));
      expect(Math.min(...xs, ...ys)).toBeGreaterThan(0.04);
      expect(Math.max(...xs, ...ys)).toBeLessThan(0.96);
      const [wide, tall] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
      expect(Math.max(wide, tall)).toBeGreaterThan(0.85);
    }
  });

  test('an eased change begins and ends where it should, by the shorter way round', () => {
    const to = { ...slideBy(home, [4, 0, 0]), bearing: 10, distance: 40 };
    expect(between(home, to, 0).bearing).toBeCloseTo(342, 9);
    expect(between(home, to, 0.5).bearing).toBeCloseTo(356, 9);
    expect(between(home, to, 1).distance).toBeCloseTo(40, 9);
    expect(distance(eyeOf(between(home, to, 1)), eyeOf(to))).toBeLessThan(1e-9);
  });
});
