import { expect, test } from 'vitest';
import { touching } from '../../src/assess/touching.ts';
import type { Box } from '../../src/assess/solidsChange.ts';
import type { Vec3 } from '../../src/base/vector.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { inFrame } from '../../src/optics/projection.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { cameraWith } from '../optics/sampleCamera.ts';

const level = (height: number, cell = 0.1) => {
  const plane = horizontalPlane(height);
  return { plane, floor: plane, cell };
};

/** A camera at 3 m that looks north: its frame begins a few metres off, and takes in less than 45° to either side. */
const north = cameraWith({ eye: [0, 0, 3], pan: 0, tilt: 20, focalLength: 4, range: 30 });

const boxAt = ([x, y, z]: Vec3, half: number): Box => [
  x - half,
  y - half,
  z - half,
  x + half,
  y + half,
  z + half,
];

test('whatever has a point in the frame before the plane touches, by projecting points of it', () => {
  let [seen, missed] = [0, 0];
  const chance = chanceFrom(52);
  for (let trial = 0; trial < trials(1500, 40_000); trial += 1) {
    const camera = cameraWith({
      eye: [0, 0, chance.between(0.5, 5)],
      pan: chance.between(0, 360),
      tilt: chance.between(-30, 80),
      roll: chance.pick([0, 0, 25]),
      focalLength: chance.between(1.5, 6),
      k: chance.pick([1, 1, 0.5, 0, -0.5]),
    });
    const height = chance.pick([0, 1.6]);
    const half: Vec3 = [chance.between(0.05, 2), chance.between(0.05, 2), chance.between(0.05, 2)];
    const middle: Vec3 = [chance.between(-12, 12), chance.between(-12, 12), chance.between(-1, 8)];
    const spot = (): Vec3 => [
      middle[0] + half[0] * chance.between(-1, 1),
      middle[1] + half[1] * chance.between(-1, 1),
      middle[2] + half[2] * chance.between(-1, 1),
    ];
    const isBefore = (z: number) => (camera.eye[2] > height ? z > height : z < height);
    const points = Array.from({ length: 60 }, spot).filter(([, , z]) => isBefore(z));
    const isSeen = points.some((point) => inFrame(camera, point));
    const box: Box = [
      middle[0] - half[0],
      middle[1] - half[1],
      middle[2] - half[2],
      middle[0] + half[0],
      middle[1] + half[1],
      middle[2] + half[2],
    ];
    const touches = touching(camera, level(height))(box);
    expect(isSeen && !touches, `trial ${trial}`).toBe(false);
    if (isSeen) seen += 1;
    else if (!touches) missed += 1;
  }
  // Where all were taken to touch, nothing would be told.
  expect(seen).toBeGreaterThan(100);
  expect(missed).toBeGreaterThan(100);
});

test('what stands behind the lens, beside the frame or beyond the plane does not touch', () => {
  const touches = touching(north, level(1.6));
  expect(touches(boxAt([0, -5, 1], 1))).toBe(false);
  expect(touches(boxAt([20, 2, 1], 1))).toBe(false);
  expect(touches([5, 9, 0, 6, 10, 1.2])).toBe(false);
  expect(touches([2, 9, 0, 3, 10, 1.7])).toBe(true);
});

test('what lies within two cells of the frame or of the plane touches', () => {
  expect(touching(north, level(1.6, 0.1))([2, 9, 0, 3, 10, 1.45])).toBe(true);
  expect(touching(north, level(1.6, 0.05))([2, 9, 0, 3, 10, 1.45])).toBe(false);
});

test('what stands under the axis touches even before the frame begins, since the reach is told from there', () => {
  const touches = touching(north, level(0));
  expect(touches(boxAt([0, 1, 0.3], 0.2))).toBe(true);
  expect(touches(boxAt([1.5, 1, 0.3], 0.2))).toBe(false);
});

test('what hangs in the frame above the lens touches: the frame is drawn up to it', () => {
  const up = cameraWith({ eye: [0, 0, 3], pan: 0, tilt: -10, focalLength: 4, range: 30 });
  expect(touching(up, level(0))(boxAt([0, 20, 8], 1))).toBe(true);
});
