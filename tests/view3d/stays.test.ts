import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../src/base/vector.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { imageFromSite } from '../../src/optics/projection.ts';
import { insideOf } from '../../src/view3d/navigate/insideOf.ts';
import { lensView, lookAbout, standAt, standSpot, walk } from '../../src/view3d/navigate/stays.ts';
import { eyeOf, fieldOf } from '../../src/view3d/orbit.ts';
import { sheetOf } from '../../src/view3d/sheet.ts';
import { chanceFrom } from '../house/seeded.ts';
import { box } from './shapes.ts';

const camera: Camera = {
  id: 'c',
  name: 'C1',
  eye: [3, -4, 2.7],
  pan: 205,
  tilt: 24,
  roll: 0,
  focalLength: 4,
  k: 1,
  sensor: { width: 5.12, height: 2.88 },
  frame: { width: 2560, height: 1440 },
  range: 100,
};

describe('the view through a lens', () => {
  // Judged by the optics' own projection, which shares no code with the view's.
  it.each([
    [0, 1000, 700],
    [12, 1000, 700],
    [90, 390, 336],
    [-30, 500, 900],
  ])('shows a straight lens’s picture point for point (roll %d, window %d × %d, seed 5)', (roll, w, h) => {
    const chance = chanceFrom(5);
    const turned = { ...camera, roll };
    const view = lensView(turned, w / h);
    const sheet = sheetOf(view, w, h);
    const frame = view.stay?.frame;
    if (!frame) throw new Error('a lens has a frame');
    const tall = (h * Math.tan((frame.vertical * Math.PI) / 360)) / Math.tan((fieldOf(view) * Math.PI) / 360);
    const perPixel = tall / camera.frame.height;
    expect(tall).toBeLessThan(h);
    expect(tall * frame.aspect).toBeLessThan(w);
    let seen = 0;
    for (let i = 0; i < 60; i += 1) {
      const point: Vec3 = [chance.between(-8, 8), chance.between(-20, -5), chance.between(0, 3)];
      const image = imageFromSite(turned, point);
      const spot = sheet.spotFromSite(point);
      if (!image || !spot) continue;
      seen += 1;
      expect(spot.x).toBeCloseTo(w / 2 + (image.u - 1280) * perPixel, 5);
      expect(spot.y).toBeCloseTo(h / 2 + (image.v - 720) * perPixel, 5);
    }
    expect(seen).toBeGreaterThan(20);
  });

  it('says that a lens bends, and shows no more than a flat picture holds', () => {
    const wide = lensView({ ...camera, k: 0, focalLength: 1.1 }, 1.4);
    expect(wide.stay?.frame?.bent).toBe(true);
    expect(wide.stay?.frame?.stated).toBeGreaterThan(120);
    expect(wide.stay?.frame?.vertical).toBe(120);
  });
});

describe('standing', () => {
  it('has the eye 1.6 m above the spot, with a field of 60°', () => {
    const view = standAt([2, 5, 0.3], 30);
    expect(distance(eyeOf(view), [2, 5, 1.9])).toBeLessThan(1e-9);
    expect(fieldOf(view)).toBe(60);
  });

  it('walks level along where one looks, also while looking down', () => {
    const east = lookAbout(standAt([0, 0, 0], 90), 0, -35);
    expect(distance(eyeOf(walk(east, 0.5)), [0.5, 0, 1.6])).toBeLessThan(1e-9);
  });

  it('looks about from the same eye, right and up, never past 80°', () => {
    const view = standAt([1, 1, 0], 350);
    const right = lookAbout(view, 15, 10);
    expect(right.bearing).toBeCloseTo(5, 9);
    expect(right.elevation).toBeCloseTo(-10, 9);
    expect(distance(eyeOf(right), eyeOf(view))).toBeLessThan(1e-9);
    expect(lookAbout(view, 0, 300).elevation).toBe(-80);
  });

  it('takes the ground under the pointer, or the ground before a wall', () => {
    const ray = { from: [0, -10, 5] as Vec3, along: [0, 0.8, -0.6] as Vec3 };
    const rest = {
      ray,
      handle: null,
      camera: null,
      lamp: null,
      metresPerPixel: 0.01,
      shift: false,
      free: false,
      by: 'mouse',
      grip: null,
      screen: { spot: [0, 0] as const, place: () => null, seen: () => true, plan: false },
    };
    const on = (struck: Parameters<typeof standSpot>[0]['struck']) =>
      standSpot({ ...rest, by: 'mouse', struck }, 0);
    expect(on({ point: [1, 2, 0], normal: [0, 0, 1], structure: null })).toEqual([1, 2, 0]);
    expect(on({ point: [1, 2, 1.5], normal: [0, -1, 0], structure: 'h' })?.[1]).toBeCloseTo(1.2, 9);
    expect(on(null)?.[1]).toBeCloseTo(-10 + (5 / 0.6) * 0.8, 9);
  });
});

describe('insideOf', () => {
  const house = box('house', [0, 0, 0], [4, 3, 2.5]);

  it('finds the solid that one stands in, and none beside, above or under it', () => {
    expect(insideOf([house], [1, 1, 1.6])).toBe(house);
    expect(insideOf([house], [2, 1.5, 1.6])).toBe(house);
    for (const point of [
      [5, 1, 1.6],
      [1, 1, 2.6],
      [1, 1, -0.1],
    ] as const)
      expect(insideOf([house], [...point])).toBeNull();
  });
});
