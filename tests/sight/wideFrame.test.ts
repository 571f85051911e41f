import { expect, test } from 'vitest';
import { footingOf } from '../../src/sight/footing.ts';
import { frameHalfPlanes } from '../../src/sight/frame.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { wideCamera } from './wideCamera.ts';

test('a bent frame has a pyramid around it up to 90° off the axis, and none from there on', () => {
  const sides = (corner: number) => {
    // Equidistant: the corner of the sensor lies f·θ from its middle.
    const focalLength = Math.hypot(5.37, 3.04) / 2 / ((corner * Math.PI) / 180);
    const camera = { ...wideCamera, k: 0, focalLength };
    return frameHalfPlanes(camera, footingOf(camera.eye, horizontalPlane(0)))?.length;
  };
  expect(sides(80)).toBe(4);
  expect(sides(90.03)).toBe(0);
  expect(sides(120)).toBe(0);
});
