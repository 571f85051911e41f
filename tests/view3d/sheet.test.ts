import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { add, scale, subtract, type Vec3 } from '../../src/base/vector.ts';
import { lookAlong, rendererFromSite, siteFromRenderer, siteGroup } from '../../src/view3d/frame.ts';
import type { Orbit } from '../../src/view3d/orbit.ts';
import { meetLevel, sheetOf } from '../../src/view3d/sheet.ts';
import { chanceFrom } from '../house/seeded.ts';

const orbit: Orbit = { pivot: [3, -2, 0.5], bearing: 342, elevation: 41, distance: 90 };
const sheet = sheetOf(orbit, 1000, 700);

describe('between site, renderer and window', () => {
  test('east stays x, up becomes y, north becomes −z, and back', () => {
    expect(rendererFromSite([1, 0, 0])).toEqual([1, 0, -0]);
    expect(rendererFromSite([0, 0, 1])).toEqual([0, 1, -0]);
    expect(rendererFromSite([0, 1, 0])).toEqual([0, 0, -1]);
    expect(siteFromRenderer(rendererFromSite([2, 3, 5]))).toEqual([2, 3, 5]);
  });

  test('the group that holds the site turns as the function does', () => {
    const [x, y, z] = new Vector3(2, 3, 5).applyMatrix4(siteGroup().matrix).toArray();
    expect([x, y, z]).toEqual(rendererFromSite([2, 3, 5]));
  });

  // Judge: three's own camera, through which the picture is drawn.
  test('a point appears where the renderer draws it (seed 21)', () => {
    const chance = chanceFrom(21);
    const camera = new PerspectiveCamera();
    const origin: Vec3 = [10, 20, 0];
    lookAlong(camera, orbit, origin, 1000 / 700, { middle: [0, 0, 0], radius: 40 });
    for (let i = 0; i < 100; i += 1) {
      const point: Vec3 = [chance.between(-15, 15), chance.between(-15, 15), chance.between(0, 6)];
      const drawn = new Vector3(...rendererFromSite(subtract(point, origin))).project(camera);
      const spot = sheet.spotFromSite(point);
      expect(spot?.x).toBeCloseTo((drawn.x / 2 + 0.5) * 1000, 6);
      expect(spot?.y).toBeCloseTo((0.5 - drawn.y / 2) * 700, 6);
      expect(Math.abs(drawn.z)).toBeLessThan(1);
    }
  });

  test('the ray from a spot leads through what appears there', () => {
    const point: Vec3 = [7, 4, 2];
    const spot = sheet.spotFromSite(point);
    if (!spot) throw new Error('behind the eye');
    const { from, along } = sheet.rayFromSpot(spot);
    const run = subtract(point, from);
    const far = Math.hypot(...run);
    expect(Math.hypot(...subtract(add(from, scale(along, far)), point))).toBeLessThan(1e-9);
  });

  test('a point behind the eye has no spot', () => {
    expect(sheet.spotFromSite(add(sheet.eye, scale(sheet.ahead, -1)))).toBeNull();
  });

  test('a pixel covers what its neighbours are apart', () => {
    const at: Vec3 = [3, -2, 0.5];
    const size = sheet.metresPerPixel(at);
    const [a, b] = [
      sheet.spotFromSite(at),
      sheet.spotFromSite(add(at, scale([Math.cos(0.314159), Math.sin(0.314159), 0], size))),
    ];
    expect(Math.hypot((a?.x ?? 0) - (b?.x ?? 0), (a?.y ?? 0) - (b?.y ?? 0))).toBeCloseTo(1, 2);
  });

  test('a ray that looks up never meets the ground', () => {
    expect(meetLevel({ from: [0, 0, 3], along: [0, 1, 0] }, 0)).toBeNull();
    expect(meetLevel({ from: [0, 0, 3], along: [0, 0.6, 0.8] }, 0)).toBeNull();
    expect(meetLevel({ from: [0, 0, 3], along: [0, 0.6, -0.8] }, 0)).toEqual([0, 2.25, 0]);
  });
});
