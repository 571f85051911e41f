import { expect, test } from 'vitest';
import { smearOf } from '../../src/optics/smear.ts';

test('a walker at 1.4 m/s goes 46.7 mm in a thirtieth of a second: 5.8 px at 125 px/m', () => {
  const { millimetres, pixels } = smearOf(1.4, 1000 / 30, 125);
  expect(millimetres).toBeCloseTo(46.667, 3);
  expect(pixels).toBeCloseTo(5.8333, 4);
});
