import { beforeAll, describe, expect, test } from 'vitest';
import { dot, subtract, type Vec3 } from '../../../src/base/vector.ts';
import type { Camera } from '../../../src/optics/camera.ts';
import { densityAt } from '../../../src/optics/density.ts';
import { axesOf, imageFromSite, inFrame } from '../../../src/optics/projection.ts';
import { chanceFrom, trials, type Chance } from '../../house/seeded.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';
import { openCv, type Projections } from './openCv.ts';
import { CAMERA_OA, TABLE_OA } from './tableOA.ts';

let library: Projections;
beforeAll(async () => {
  library = await openCv();
});

const HALF_DIGIT = 0.000501;

describe('table O-A, by OpenCV 4.6', () => {
  for (const { pose, point, depth, rectilinear, density, equidistant, bentDensity } of TABLE_OA) {
    const [pan, tilt, roll] = pose;
    const flat = { ...CAMERA_OA, pan, tilt, roll };
    const bent = { ...flat, k: 0 };
    test(`pose ${pose.join(', ')}, point ${point.join(', ')}`, () => {
      expect(Math.abs(dot(axesOf(flat).forward, subtract(point, flat.eye)) - depth)).toBeLessThan(5.01e-5);
      for (const [camera, wanted] of [
        [flat, rectilinear],
        [bent, equidistant],
      ] as const) {
        const at = imageFromSite(camera, point);
        expect(Math.abs((at?.u ?? Infinity) - wanted[0])).toBeLessThan(HALF_DIGIT);
        expect(Math.abs((at?.v ?? Infinity) - wanted[1])).toBeLessThan(HALF_DIGIT);
      }
      const found = densityAt(flat, point);
      expect(Math.abs((found?.horizontal ?? 0) - density[0])).toBeLessThan(HALF_DIGIT);
      expect(Math.abs((found?.vertical ?? 0) - density[1])).toBeLessThan(HALF_DIGIT);
      expect(Math.abs((densityAt(bent, point)?.horizontal ?? 0) - bentDensity)).toBeLessThan(HALF_DIGIT);
    });
  }

  test('the frame refuses the place that lies outside the picture, and holds the others', () => {
    // (5, 7, 0.5) at the level pose lies on the frame's very edge: nothing is asked of it.
    const asked = TABLE_OA.filter(({ rectilinear: [, v] }) => v !== 1440);
    const found = asked.map(({ pose: [pan, tilt, roll], point }) =>
      inFrame({ ...CAMERA_OA, pan, tilt, roll }, point),
    );
    expect(found).toEqual([true, true, true, true, true, true, false, true]);
  });
});

/** A camera of any pose, with pixels that need not be square, and targets ahead of it up to 70° off its axis. */
function anyView(chance: Chance, k: 0 | 1): { readonly camera: Camera; readonly points: readonly Vec3[] } {
  const camera = cameraWith({
    k,
    eye: [chance.between(-20, 20), chance.between(-20, 20), chance.between(0, 6)],
    pan: chance.between(-180, 360),
    tilt: chance.between(-60, 90),
    roll: chance.pick([0, 90, chance.between(-180, 180)]),
    focalLength: chance.between(2, 12),
    frame: { width: 2560, height: chance.pick([1440, 1920]) },
  });
  const { right, down, forward } = axesOf(camera);
  const points = Array.from({ length: 40 }, (): Vec3 => {
    const [off, round] = [chance.between(0.02, 1.22), chance.between(0, 2 * Math.PI)];
    const far = chance.between(2, 60);
    const [r, d, f] = [Math.sin(off) * Math.cos(round), Math.sin(off) * Math.sin(round), Math.cos(off)];
    const on = (axis: 0 | 1 | 2) =>
      camera.eye[axis] + far * (r * right[axis] + d * down[axis] + f * forward[axis]);
    return [on(0), on(1), on(2)];
  });
  return { camera, points };
}

const LENSES = [
  ['rectilinear', 1],
  ['equidistant', 0],
] as const;

describe.each(LENSES)('random poses of a %s lens', (name, k) => {
  test('put points where OpenCV puts them', () => {
    const chance = chanceFrom(71);
    for (let trial = 0; trial < trials(40, 2000); trial += 1) {
      const { camera, points } = anyView(chance, k);
      const found = points.map((point) => imageFromSite(camera, point));
      library[name](camera, points).forEach(([u, v], at) => {
        const apart = Math.hypot((found[at]?.u ?? Infinity) - u, (found[at]?.v ?? Infinity) - v);
        expect(apart, `seed 71, trial ${trial}, point ${at}`).toBeLessThan(1e-6);
      });
    }
  });

  test('have the density by which OpenCV’s image moves', () => {
    const chance = chanceFrom(72);
    const step = 1e-4;
    for (let trial = 0; trial < trials(40, 2000); trial += 1) {
      const { camera, points } = anyView(chance, k);
      const moved = (along: (point: Vec3) => Vec3): readonly number[] => {
        const at = (sign: number) =>
          library[name](
            camera,
            points.map((point) => {
              const [x, y, z] = along(point);
              return [point[0] + sign * step * x, point[1] + sign * step * y, point[2] + sign * step * z];
            }),
          );
        const [before, after] = [at(-1), at(1)];
        return after.map(([u, v], index) => {
          const [u0, v0] = before[index] ?? [Number.NaN, Number.NaN];
          return Math.hypot(u - u0, v - v0) / (2 * step);
        });
      };
      const acrossBearing = ([x, y]: Vec3): Vec3 => {
        const [dx, dy] = [x - camera.eye[0], y - camera.eye[1]];
        const over = Math.hypot(dx, dy);
        return [dy / over, -dx / over, 0];
      };
      const horizontal = moved(acrossBearing);
      const vertical = moved(() => [0, 0, 1]);
      points.forEach((point, at) => {
        const found = densityAt(camera, point);
        const told = trial * 100 + at;
        expect(Math.abs((found?.horizontal ?? 0) - (horizontal[at] ?? 0)), `seed 72, ${told}`).toBeLessThan(
          0.01,
        );
        expect(Math.abs((found?.vertical ?? 0) - (vertical[at] ?? 0)), `seed 72, ${told}`).toBeLessThan(0.01);
      });
    }
  });
});
