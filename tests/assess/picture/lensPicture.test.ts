import { expect, test } from 'vitest';
import { lensPicture } from '../../../src/assess/picture/lensPicture.ts';
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';
import { offLine } from './offLine.ts';

/*
 * ρ of the named projections, as published (an optics glossary's page on fisheye types and the PanoTools wiki page "General
 * lens model", by the project's facts O9), written as they stand there.
 */
const PUBLISHED = [
  ['stereographic', 0.5, (f: number, theta: number) => 2 * f * Math.tan(theta / 2)],
  ['equisolid-angle', -0.5, (f: number, theta: number) => 2 * f * Math.sin(theta / 2)],
  ['orthographic', -1, (f: number, theta: number) => f * Math.sin(theta)],
] as const;

test.each(PUBLISHED)(
  'a straight line through a %s lens is drawn within 0.1 px of its formula',
  (_, k, rho) => {
    const chance = chanceFrom(4410);
    let drawn = 0;
    for (let trial = 0; trial < trials(60, 3000); trial += 1) {
      // Level, along north, so that right, down and ahead are x, −z and y.
      const camera = cameraWith({ k, eye: [0, 0, 0], focalLength: chance.between(1.2, 4) });
      const any = (): Vec3 => [chance.between(-9, 9), chance.between(-2, 9), chance.between(-5, 5)];
      const [from, to] = [any(), any()];
      const parts = lensPicture(camera).segment(from, to);
      const px = camera.frame.width / camera.sensor.width;
      for (let step = 0; step <= 40; step += 1) {
        const t = step / 40;
        const [x, y, z] = from.map((n, axis) => n + ((to[axis] ?? 0) - n) * t) as [number, number, number];
        const theta = Math.acos(y / Math.hypot(x, y, z));
        if (theta > (k === -1 ? 1.5 : 2.9)) continue;
        const off = Math.hypot(x, z);
        const radius = rho(camera.focalLength, theta) * px;
        const at: Vec2 = [
          camera.frame.width / 2 + (radius * x) / off,
          camera.frame.height / 2 - (radius * z) / off,
        ];
        if (at[0] < 0 || at[1] < 0 || at[0] > camera.frame.width || at[1] > camera.frame.height) continue;
        drawn += 1;
        expect(offLine(parts, at), `seed 4410, trial ${trial}, ${step}`).toBeLessThan(0.1);
      }
    }
    expect(drawn).toBeGreaterThan(trials(100, 5000));
  },
);

test('a line that leaves the frame and comes back is drawn in parts, none of them outside', () => {
  // 56.9° up in the middle, where 1.6 mm × 0.993 rad reaches 6 px past the top; towards the sides it comes down.
  const camera = cameraWith({ k: 0, eye: [0, 0, 0], focalLength: 1.6 });
  const parts = lensPicture(camera).segment([-20, 3, 4.6], [20, 3, 4.6]);
  expect(parts.length).toBe(2);
  const inside = parts.every((part) =>
    Array.from({ length: part.length / 2 }, (_, k) => [part[2 * k] ?? -1, part[2 * k + 1] ?? -1]).every(
      ([x = -1, y = -1]) => x >= -1e-6 && y >= -1e-6 && x <= 2560 + 1e-6 && y <= 1440 + 1e-6,
    ),
  );
  expect(inside).toBe(true);
});

test('what lies behind a rectilinear lens is not drawn, and a line that passes the lens is drawn ahead of it only', () => {
  const lens = lensPicture(cameraWith({ eye: [0, 0, 0] }));
  expect(lens.segment([-1, -2, 0], [1, -2, 0])).toEqual([]);
  // From 1 m ahead in the middle to straight behind, 1 m to the right: it leaves by the right edge at half height.
  const [part = new Float64Array()] = lens.segment([0, 1, 0], [1, -1, 0]);
  expect([...part].map((n) => Math.round(n * 1e3) / 1e3)).toEqual([1280, 720, 2560, 720]);
});
