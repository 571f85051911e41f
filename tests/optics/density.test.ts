import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { densityAlong, densityAt, depressionAt } from '../../src/optics/density.ts';
import { greatestAngleRad } from '../../src/optics/lens.ts';
import { axesOf } from '../../src/optics/projection.ts';
import { leastHorizontalDensity, numericalDensity } from '../oracle/numericalDensity.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { anyCamera, cameraWith, LAWS } from './sampleCamera.ts';

/** A target between 1 and 50 m off whose image is not within half a degree of the law's end. */
function anyTarget(camera: Camera, chance: Chance): Vec3 {
  const { right, down, forward } = axesOf(camera);
  const theta = chance.between(0.001, Math.min(greatestAngleRad(camera.k) - 0.01, Math.PI - 0.05));
  const round = chance.between(0, 2 * Math.PI);
  const far = chance.between(1, 50);
  const [r, d, f] = [Math.sin(theta) * Math.cos(round), Math.sin(theta) * Math.sin(round), Math.cos(theta)];
  const on = (axis: 0 | 1 | 2) =>
    camera.eye[axis] + far * (r * right[axis] + d * down[axis] + f * forward[axis]);
  return [on(0), on(1), on(2)];
}

const bearingSquare = ({ eye }: Camera, point: Vec3): Vec3 => {
  const [dx, dy] = [point[0] - eye[0], point[1] - eye[1]];
  const over = Math.hypot(dx, dy);
  return [-dy / over, dx / over, 0];
};

describe('density at a target', () => {
  test('is what moving it by a hair moves its image, for every law and pose', () => {
    const chance = chanceFrom(41);
    for (let trial = 0; trial < trials(2000, 50_000); trial += 1) {
      const camera = anyCamera(chance);
      const point = anyTarget(camera, chance);
      if (Math.hypot(point[0] - camera.eye[0], point[1] - camera.eye[1]) < 0.01) continue;
      const found = densityAt(camera, point);
      const horizontal = numericalDensity(camera, point, bearingSquare(camera, point));
      const vertical = numericalDensity(camera, point, [0, 0, 1]);
      expect(
        Math.abs((found?.horizontal ?? 0) - horizontal),
        `seed 41, trial ${trial}, k ${camera.k}`,
      ).toBeLessThan(1e-5 + 1e-6 * horizontal);
      expect(
        Math.abs((found?.vertical ?? 0) - vertical),
        `seed 41, trial ${trial}, k ${camera.k}`,
      ).toBeLessThan(1e-5 + 1e-6 * vertical);
    }
  });

  test('along any direction likewise', () => {
    const chance = chanceFrom(42);
    for (let trial = 0; trial < trials(500, 10_000); trial += 1) {
      const camera = anyCamera(chance);
      const point = anyTarget(camera, chance);
      const [turn, rise] = [chance.between(0, 7), chance.between(-1.5, 1.5)];
      const along: Vec3 = [Math.cos(rise) * Math.cos(turn), Math.cos(rise) * Math.sin(turn), Math.sin(rise)];
      const wanted = numericalDensity(camera, point, along);
      expect(
        Math.abs((densityAlong(camera, point, along) ?? 0) - wanted),
        `seed 42, trial ${trial}`,
      ).toBeLessThan(1e-5 + 1e-6 * wanted);
    }
  });

  test('falls with the distance along a ray', () => {
    const camera = cameraWith({ tilt: 20, pan: 30, k: 0.4 });
    const at = (far: number) => densityAt(camera, [far * 0.3, far * 0.8, 3 - far * 0.4])?.horizontal ?? 0;
    expect(at(4) / at(8)).toBeCloseTo(2, 12);
    expect(at(1) / at(40)).toBeCloseTo(40, 10);
    const ahead = (far: number) => densityAt(cameraWith(), [0, far, 3])?.horizontal ?? 0;
    expect(ahead(0.4) / ahead(4)).toBeCloseTo(10, 10);
  });

  test('has no number where the lens has no image, and throws on what is no point', () => {
    expect(densityAt(cameraWith(), [0, -5, 3])).toBe(null);
    expect(densityAlong(cameraWith(), [0, -5, 3], [1, 0, 0])).toBe(null);
    expect(densityAt(cameraWith(), [0, 0, 3])).toBe(null);
    expect(() => densityAt(cameraWith(), [0, Number.NaN, 0])).toThrow(RangeError);
    expect(() => densityAt(cameraWith(), [Infinity, 0, 0])).toThrow('Infinity');
  });
});

describe('density straight below the lens', () => {
  const steep = [
    cameraWith({ tilt: 90 }),
    cameraWith({ tilt: 60, roll: 25 }),
    cameraWith({ tilt: 70, pan: 200, k: 0.5 }),
    cameraWith({ tilt: 35, k: 0, pan: 77, roll: -40 }),
    cameraWith({ tilt: 20, k: -0.5, frame: { width: 2560, height: 1920 } }),
    cameraWith({ tilt: 80, k: -1, roll: 90 }),
  ];

  test('is the least over all horizontals', () => {
    for (const camera of steep) {
      const point: Vec3 = [0, 0, 0.5];
      const wanted = leastHorizontalDensity(camera, point);
      expect(
        Math.abs((densityAt(camera, point)?.horizontal ?? 0) / wanted - 1),
        `k ${camera.k}`,
      ).toBeLessThan(1e-7);
    }
  });

  test('is what the least of the places around it comes to', () => {
    for (const camera of steep) {
      const below = densityAt(camera, [0, 0, 0.5])?.horizontal ?? 0;
      const around = Array.from({ length: 3600 }, (_, tenth) => {
        const turn = (tenth * Math.PI) / 1800;
        return densityAt(camera, [1e-5 * Math.sin(turn), 1e-5 * Math.cos(turn), 0.5])?.horizontal ?? Infinity;
      });
      expect(Math.abs(Math.min(...around) / below - 1), `k ${camera.k}`).toBeLessThan(1e-4);
      expect(Math.max(...around)).toBeGreaterThanOrEqual(below);
    }
  });

  test('of a level camera is none for a lens that does not see there', () => {
    expect(densityAt(cameraWith({ tilt: 0 }), [0, 0, 0])).toBe(null);
  });
});

describe('density goes over without a step', () => {
  test('across the axis', () => {
    for (const k of LAWS) {
      const camera = cameraWith({ k });
      const on = densityAt(camera, [0, 10, 3]);
      for (const aside of [1e-7, -1e-7, 1e-5]) {
        const off = densityAt(camera, [aside, 10, 3 - aside]);
        expect(Math.abs((off?.horizontal ?? 0) - (on?.horizontal ?? 0))).toBeLessThan(1e-6);
        expect(Math.abs((off?.vertical ?? 0) - (on?.vertical ?? 0))).toBeLessThan(1e-6);
      }
    }
  });

  test('from laws above k = 0 to laws below', () => {
    const at = (k: number) => densityAt(cameraWith({ k }), [6, 7, 1])?.horizontal ?? 0;
    for (const k of [1e-7, -1e-7]) expect(Math.abs(at(k) - at(0))).toBeLessThan(1e-9);
  });
});

test('depression is the angle at the target from its horizon up to the lens', () => {
  expect(depressionAt([0, 0, 3], [3, 0, 0])).toBeCloseTo(45, 12);
  expect(depressionAt([0, 0, 3], [0, 4, 3])).toBe(0);
  expect(depressionAt([0, 0, 3], [0, 0, 0])).toBe(90);
  expect(depressionAt([0, 0, 1], [0, 1, 2])).toBeCloseTo(-45, 12);
  expect(depressionAt([70, -20, 8], [73, -16, 3])).toBeCloseTo(45, 12);
});
