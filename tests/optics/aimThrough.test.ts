import { expect, test } from 'vitest';
import { aimThrough } from '../../src/optics/aimThrough.ts';
import { imageFromUpright, quarterOf, uprightFromImage, uprightFrame } from '../../src/optics/upright.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { plainImage, plainTurn } from '../oracle/plainCamera.ts';
import { anyCamera, cameraWith } from './sampleCamera.ts';

test('a place stays under the pointer: aimed so, a plain camera puts it at that very pixel', () => {
  const chance = chanceFrom(3310);
  let asked = 0;
  for (let trial = 0; trial < trials(400, 20_000); trial += 1) {
    const camera = anyCamera(chance);
    const { width, height } = camera.frame;
    const at = { u: chance.between(0, width), v: chance.between(0, height) };
    // A place that can be put there: where it is seen by the camera in another pose.
    const other = { ...camera, pan: chance.between(0, 360), tilt: chance.between(-85, 85) };
    const way = wayThrough(other, at);
    if (way === null) continue;
    const aim = aimThrough({ ...camera, tilt: other.tilt + chance.between(-1, 1) }, way, at);
    if (aim === null) throw new Error('no aim');
    const point = way.map((n, axis) => (camera.eye[axis] ?? 0) + 7 * n);
    const found = plainImage({ ...camera, ...aim }, point);
    asked += 1;
    // A hair off the end of a law a pixel takes up no angle, so that pixels are compared as angles there.
    const apart = found === null ? Infinity : Math.hypot(found[0] - at.u, found[1] - at.v);
    expect(apart, `seed 3310, trial ${trial}, k ${camera.k}`).toBeLessThan(1e-4);
    expect(Math.abs(aim.tilt)).toBeLessThanOrEqual(90);
  }
  expect(asked).toBeGreaterThan(trials(250, 12_000));
});

/** The direction of a pixel of a plain camera, by the transpose of its own rotation. */
function wayThrough(
  camera: ReturnType<typeof anyCamera>,
  at: { u: number; v: number },
): [number, number, number] | null {
  const { sensor, frame, focalLength, k } = camera;
  const x = ((at.u - frame.width / 2) * sensor.width) / frame.width / focalLength;
  const y = ((at.v - frame.height / 2) * sensor.height) / frame.height / focalLength;
  const g = Math.hypot(x, y);
  const theta = k > 0 ? Math.atan(k * g) / k : k === 0 ? g : Math.asin(Math.min(2, -k * g)) / -k;
  if (!(theta < 3.1) || g < 1e-6) return null;
  if (k < 0 && -k * g > 0.9999) return null;
  const own = [(Math.sin(theta) * x) / g, (Math.sin(theta) * y) / g, Math.cos(theta)];
  const columns = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((axis) => plainTurn(camera, axis));
  const [wx, wy, wz] = columns.map((column) => column.reduce((sum, n, i) => sum + n * (own[i] ?? 0), 0));
  return [wx ?? 0, wy ?? 0, wz ?? 0];
}

test('within its mount’s limits a tilt goes as far as it can, and the bearing still follows', () => {
  const camera = cameraWith({ tilt: 20 });
  // Straight ahead, 60° down, asked for in the middle of the picture, with 30° at most.
  const way = [0, Math.cos(Math.PI / 3), -Math.sin(Math.PI / 3)] as const;
  const middle = { u: camera.frame.width / 2, v: camera.frame.height / 2 };
  const aim = aimThrough(camera, way, middle, { least: -90, most: 30 });
  expect(aim?.tilt).toBe(30);
  expect(Math.min(aim?.pan ?? 99, 360 - (aim?.pan ?? 99))).toBeCloseTo(0, 9);
});

test('a corridor picture stands upright: what is above is at its top', () => {
  // Rolled clockwise by a quarter, the top of the site lies at the left of the recorded picture.
  const camera = cameraWith({ roll: 90 });
  const above = plainImage(camera, [0, 10, 4]);
  if (above === null) throw new Error('no image');
  const turned = quarterOf(camera);
  const { width, height } = uprightFrame(camera.frame, turned);
  expect([turned, width, height]).toEqual([90, 1440, 2560]);
  const at = uprightFromImage({ u: above[0], v: above[1] }, camera.frame, turned);
  expect(at.u).toBeCloseTo(width / 2, 6);
  expect(at.v).toBeLessThan(height / 2);
  expect([-90, 270, 180, 44, -46, 360].map((roll) => quarterOf({ roll }))).toEqual([
    270, 270, 180, 0, 270, 0,
  ]);
});

test('upright places lead back to the recorded ones', () => {
  const frame = { width: 2560, height: 1440 };
  for (const turned of [0, 90, 180, 270] as const) {
    const at = imageFromUpright(uprightFromImage({ u: 100, v: 30 }, frame, turned), frame, turned);
    expect(at).toEqual({ u: 100, v: 30 });
  }
});
