import { describe, expect, test } from 'vitest';
import { sunPosition, sunWay } from '../../../src/assess/cautions/sunPosition.ts';
import { outsideFrame } from '../../../src/assess/cautions/rows/sunInPicture.ts';
import { imageFromSite } from '../../../src/optics/projection.ts';
import type { Camera } from '../../../src/optics/camera.ts';

/*
 * The test case of NREL's Solar Position Algorithm, as spa_tester.c in public repositories prints it (Reda and Andreas, Solar
 * Energy 76(5), 2004, NREL/TP-560-34302): 17 October 2003, 12:30:30 at UTC−7, 39.742476° N, 105.1786° W. Azimuth 194.340241°,
 * zenith 50.111622° with refraction; its height without refraction is 39.872046°, its declination is not asked here. Ours are
 * low-precision formulae of another book, good to 0.01°, as is fair for glare.
 */
const JULIAN_DAY = 2_452_930.312847;
const [LATITUDE, LONGITUDE] = [39.742476, -105.1786];

describe('the sun of the published test case', () => {
  const sun = sunPosition(JULIAN_DAY, LATITUDE, LONGITUDE);

  test('stands there to 0.01°', () => {
    expect(Math.abs(sun.bearing - 194.340241)).toBeLessThan(0.01);
    expect(Math.abs(sun.height - 39.872046)).toBeLessThan(0.01);
  });

  test('rises and sets within the minute: 06:12:43 and 17:20:19, as the test case prints', () => {
    // At sunrise and sunset the middle of the sun is 0.8333° below the horizon: radius and refraction, as the algorithm has it.
    // It takes both of the day by UTC, in which the sun of that place sets on the evening before.
    const heightAt = (hour: number) =>
      sunPosition(2_452_929.5 + (hour + 7) / 24, LATITUDE, LONGITUDE).height + 0.8333;
    for (const [hour, rising] of [
      [6 + 12 / 60 + 43 / 3600, 1],
      [17 + 20 / 60 + 19 / 3600 - 24, -1],
    ] as const) {
      expect(rising * heightAt(hour + 1 / 60)).toBeGreaterThan(0);
      expect(rising * heightAt(hour - 1 / 60)).toBeLessThan(0);
    }
  });

  test('is a vector of the site frame (by the definition of bearing and height)', () => {
    // With refraction: (−0.190043, −0.743388, 0.641294), from the two angles that the test case prints.
    const way = sunWay({ bearing: 194.340241, height: 39.888378 }, 0);
    [-0.190043, -0.743388, 0.641294].forEach((n, axis) => expect(way[axis]).toBeCloseTo(n, 5));
    const turned = sunWay({ bearing: 194.340241, height: 39.888378 }, 14.340241);
    expect(turned[0]).toBeCloseTo(0, 9);
  });
});

test('how far outside the picture the sun stands: none within, then the angle to its edge', () => {
  const camera: Camera = {
    id: 'C1',
    name: 'C1',
    eye: [0, 0, 3],
    pan: 180,
    tilt: 0,
    roll: 0,
    focalLength: 4,
    k: 1,
    sensor: { width: 8, height: 4.5 },
    frame: { width: 2560, height: 1440 },
    range: 30,
  };
  // 45° to each side, and 29.36° up: straight ahead at 34.36° it is 5° above.
  const above = (height: number) => outsideFrame({ camera }, sunWay({ bearing: 180, height }, 0));
  const top = (Math.atan(0.5625) * 180) / Math.PI;
  expect(above(top - 0.01)).toBe(0);
  expect(above(top + 5)).toBeCloseTo(5, 6);
  expect(outsideFrame({ camera }, sunWay({ bearing: 180 + 45 + 8, height: 0 }, 0))).toBeCloseTo(8, 6);
  expect(outsideFrame({ camera }, sunWay({ bearing: 0, height: 10 }, 0))).toBeGreaterThan(90);
  expect(imageFromSite(camera, [0, -1, 3])).toEqual({ u: 1280, v: 720 });
});
