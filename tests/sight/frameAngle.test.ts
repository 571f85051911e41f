import { expect, test } from 'vitest';
import { frameAngle } from '../../src/sight/frame.ts';
import { wideCamera } from './wideCamera.ts';

test('the greatest angle of a frame is that of its corner by the law, or the end of the law where the frame goes on', () => {
  const sensor = { width: 4, height: 3 };
  const at = (k: number, focalLength: number) => frameAngle({ ...wideCamera, k, focalLength, sensor });
  // The corner lies 2.5 mm off: ρ = f θ, ρ = f tan θ, ρ = f sin θ (facts O2).
  expect(at(0, 2)).toBeCloseTo(1.25, 12);
  expect(at(1, 2.5)).toBeCloseTo(Math.PI / 4, 12);
  expect(at(-1, 5)).toBeCloseTo(Math.PI / 6, 12);
  expect(at(-1, 2)).toBeCloseTo(Math.PI / 2, 12);
});
