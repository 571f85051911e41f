import { describe, expect, test } from 'vitest';
import { cross, dot, type Vec3 } from '../../src/base/vector.ts';
import {
  aimAt,
  axesOf,
  imageFromSite,
  inFrame,
  pixelPitch,
  siteRayFromImage,
} from '../../src/optics/projection.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { anyCamera, cameraWith, LAWS } from './sampleCamera.ts';

const expectNear = (found: Vec3, wanted: readonly number[], digits = 12): void => {
  found.forEach((n, axis) => expect(n).toBeCloseTo(wanted[axis] ?? Number.NaN, digits));
};

describe('the axes of a pose', () => {
  test('are unit, square to one another, and down is forward × right', () => {
    const chance = chanceFrom(31);
    for (let trial = 0; trial < trials(300, 10_000); trial += 1) {
      const { right, down, forward } = axesOf(anyCamera(chance));
      for (const axis of [right, down, forward]) expect(dot(axis, axis)).toBeCloseTo(1, 12);
      expect(dot(right, down)).toBeCloseTo(0, 12);
      expect(dot(right, forward)).toBeCloseTo(0, 12);
      expectNear(down, cross(forward, right));
    }
  });

  test('at quarter turns are those of the compass', () => {
    const level = (pan: number) => axesOf({ pan, tilt: 0, roll: 0 });
    expectNear(level(0).forward, [0, 1, 0]);
    expectNear(level(0).right, [1, 0, 0]);
    expectNear(level(0).down, [0, 0, -1]);
    expectNear(level(90).forward, [1, 0, 0]);
    expectNear(level(90).right, [0, -1, 0]);
    expectNear(level(-90).forward, [-1, 0, 0]);
    const nadir = axesOf({ pan: 0, tilt: 90, roll: 0 });
    expectNear(nadir.forward, [0, 0, -1]);
    // Straight down with pan 0 the picture's lower edge lies towards the south.
    expectNear(nadir.down, [0, -1, 0]);
  });

  test('tilt is down, roll turns right towards down', () => {
    expect(axesOf({ pan: 0, tilt: 10, roll: 0 }).forward[2]).toBeCloseTo(-Math.sin(Math.PI / 18), 12);
    const corridor = axesOf({ pan: 0, tilt: 0, roll: 90 });
    expectNear(corridor.right, [0, 0, -1]);
    expectNear(corridor.down, [-1, 0, 0]);
  });
});

describe('a point of the site in the picture', () => {
  test('lies right of the middle when it is to the right, below when it is below', () => {
    const at = imageFromSite(cameraWith(), [2, 10, 1]);
    // f 2.8 mm, 2560 px on 5.6 mm: 1280 px to a slope of 1.
    expect(at?.u).toBeCloseTo(1280 + 256, 9);
    expect(at?.v).toBeCloseTo(720 + 256, 9);
  });

  test('climbs on the right when the camera rolls clockwise', () => {
    const at = imageFromSite(cameraWith({ roll: 10 }), [2, 10, 3]);
    expect(at?.v).toBeLessThan(720);
    expect(at?.u).toBeGreaterThan(1280);
  });

  test('on the axis is the middle, for every law', () => {
    for (const k of LAWS) expect(imageFromSite(cameraWith({ k }), [0, 7, 3])).toEqual({ u: 1280, v: 720 });
    expect(imageFromSite(cameraWith(), [0, 0.4, 3])).toEqual({ u: 1280, v: 720 });
  });

  test('has no image at the lens, behind a rectilinear one, or straight behind any', () => {
    expect(imageFromSite(cameraWith(), [0, 0, 3])).toBe(null);
    expect(imageFromSite(cameraWith(), [1, -0.001, 3])).toBe(null);
    expect(imageFromSite(cameraWith({ k: 0 }), [1, -0.001, 3])).not.toBe(null);
    for (const k of LAWS) expect(imageFromSite(cameraWith({ k }), [0, -5, 3])).toBe(null);
  });

  test('comes back as a ray through the point', () => {
    const chance = chanceFrom(32);
    let imaged = 0;
    for (let trial = 0; trial < trials(2000, 50_000); trial += 1) {
      const camera = anyCamera(chance);
      const point: Vec3 = [chance.between(-50, 50), chance.between(-50, 50), chance.between(-5, 10)];
      const at = imageFromSite(camera, point);
      if (at === null) continue;
      const ray = siteRayFromImage(camera, at);
      // Within a hair of the law's end the radius stands still and tells the angle no more.
      const way = point.map((n, axis) => n - (camera.eye[axis] ?? 0));
      const far = Math.hypot(...way);
      if (ray === null && camera.k < 0) continue;
      imaged += 1;
      const cosine = ray?.reduce((sum, n, axis) => sum + (n * (way[axis] ?? 0)) / far, 0) ?? Number.NaN;
      expect(cosine, `seed 32, trial ${trial}, k ${camera.k}`).toBeGreaterThan(1 - 1e-12);
      expect(Math.hypot(...(ray ?? []))).toBeCloseTo(1, 12);
    }
    expect(imaged).toBeGreaterThan(800);
  });
});

describe('a place in the picture', () => {
  test('comes back from any point on its ray', () => {
    const chance = chanceFrom(33);
    let rays = 0;
    for (let trial = 0; trial < trials(2000, 50_000); trial += 1) {
      const camera = anyCamera(chance);
      const place = { u: chance.between(0, camera.frame.width), v: chance.between(0, camera.frame.height) };
      const ray = siteRayFromImage(camera, place);
      if (ray === null) continue;
      rays += 1;
      const far = chance.between(0.1, 80);
      const point = camera.eye.map((n, axis) => n + far * (ray[axis] ?? 0));
      const back = imageFromSite(camera, [point[0] ?? 0, point[1] ?? 0, point[2] ?? 0]);
      expect(
        Math.abs((back?.u ?? Infinity) - place.u),
        `seed 33, trial ${trial}, k ${camera.k}`,
      ).toBeLessThan(1e-6);
      expect(Math.abs((back?.v ?? Infinity) - place.v)).toBeLessThan(1e-6);
    }
    expect(rays).toBeGreaterThan(1000);
  });

  test('in the very middle looks along the axis', () => {
    for (const k of LAWS) {
      const camera = cameraWith({ k, pan: 30, tilt: 20 });
      expectNear(siteRayFromImage(camera, { u: 1280, v: 720 }) ?? [0, 0, 0], axesOf(camera).forward);
    }
  });

  test('has no ray past the law', () => {
    // Orthographic, 2 mm: the image circle has a radius of 2 mm on a sensor 5.6 mm wide.
    const camera = cameraWith({ k: -1, focalLength: 2 });
    expect(siteRayFromImage(camera, { u: 1280 + (1.99 * 2560) / 5.6, v: 720 })).not.toBe(null);
    expect(siteRayFromImage(camera, { u: 1280 + (2.01 * 2560) / 5.6, v: 720 })).toBe(null);
  });
});

describe('the frame', () => {
  test('holds what its own rays meet and nothing past its edges', () => {
    const chance = chanceFrom(34);
    for (let trial = 0; trial < trials(500, 10_000); trial += 1) {
      const camera = anyCamera(chance);
      const { width, height } = camera.frame;
      const meets = (u: number, v: number): boolean | null => {
        const ray = siteRayFromImage(camera, { u, v });
        if (ray === null) return null;
        const [x, y, z] = camera.eye;
        return inFrame(camera, [x + 9 * ray[0], y + 9 * ray[1], z + 9 * ray[2]]);
      };
      const [u, v] = [chance.between(0.01, width - 0.01), chance.between(0.01, height - 0.01)];
      expect(meets(u, v)).not.toBe(false);
      expect(meets(-0.01, v)).not.toBe(true);
      expect(meets(width + 0.01, v)).not.toBe(true);
      expect(meets(u, -0.01)).not.toBe(true);
      expect(meets(u, height + 0.01)).not.toBe(true);
    }
  });

  test('holds the whole of its outermost pixels', () => {
    const camera = cameraWith({ eye: [0, 0, 0] });
    const { width, height } = camera.frame;
    for (const [u, v] of [
      [0.5, 700],
      [900, 0.5],
      [width - 0.5, 700],
      [900, height - 0.5],
    ] as const)
      expect(inFrame(camera, siteRayFromImage(camera, { u, v }) ?? [0, 0, 0]), `${u}, ${v}`).toBe(true);
  });

  test('does not hold what is behind a rectilinear lens, though its lines would cross the picture', () => {
    expect(inFrame(cameraWith(), [0.1, 10, 3])).toBe(true);
    expect(inFrame(cameraWith(), [-0.1, -10, 3])).toBe(false);
  });
});

test('a camera aimed at a point has it in the middle', () => {
  const chance = chanceFrom(35);
  for (let trial = 0; trial < trials(300, 10_000); trial += 1) {
    const camera = anyCamera(chance);
    const point: Vec3 = [chance.between(-50, 50), chance.between(-50, 50), chance.between(-5, 10)];
    const aim = aimAt(camera.eye, point, 77);
    expect(aim.pan).toBeGreaterThanOrEqual(0);
    expect(aim.pan).toBeLessThan(360);
    const at = imageFromSite({ ...camera, ...aim }, point);
    expect(at?.u).toBeCloseTo(camera.frame.width / 2, 6);
    expect(at?.v).toBeCloseTo(camera.frame.height / 2, 6);
  }
});

test('a camera aimed at the north has pan 0', () => {
  expect(aimAt([1, 2, 3], [1, 9, 3], 77)).toEqual({ pan: 0, tilt: expect.closeTo(0, 12) as unknown });
});

test('a camera aimed straight below keeps its pan', () => {
  expect(aimAt([1, 2, 3], [1, 2, 0], 77)).toEqual({ pan: 77, tilt: 90 });
  expect(aimAt([1, 2, 3], [1, 2, 9], 77)).toEqual({ pan: 77, tilt: -90 });
  // A thousandth of a millimetre off, there is a bearing.
  expect(aimAt([1, 2, 3], [1.000_001, 2, 0], 77).pan).toBeCloseTo(90, 6);
});

test('pixels per millimetre are the frame over the sensor, each way', () => {
  const camera = cameraWith({ sensor: { width: 5, height: 4 }, frame: { width: 1000, height: 1600 } });
  expect(pixelPitch(camera)).toEqual({ across: 200, down: 400 });
});
