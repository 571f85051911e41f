import { expect, test } from 'vitest';
import { angleOf } from '../../src/base/angleText.ts';

test.each([
  ['22.5', 22.5],
  ['22,5°', 22.5],
  ['−4', -4],
  ['180/8', 22.5],
  // Rise over run: a right triangle's own definition, 45° at 1:1 and at 100 %.
  ['1:1', 45],
  ['100%', 45],
  ['100 %', 45],
])('%s is an angle', (text, degrees) => {
  const reading = angleOf(text);
  expect(reading.ok ? reading.degrees : reading.trouble).toBeCloseTo(degrees, 10);
});

test('a small slope is near its own tangent', () => {
  const reading = angleOf('1:40');
  // 1.432°: rounded in tables of ramp gradients, common practice.
  expect(reading.ok ? reading.degrees : 0).toBeCloseTo(1.432, 3);
});

test.each(['', 'steep', '1:0', '3 m', '1,2.3', '1:2:3'])('%s is refused', (text) => {
  expect(angleOf(text).ok).toBe(false);
});
