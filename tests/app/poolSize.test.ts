import { expect, test } from 'vitest';
import { poolSize } from '../../src/app/poolSize.ts';

test('the pool leaves one core to the window, has one worker at least and four at most', () => {
  expect([1, 2, 3, 4, 5, 8, 64].map(poolSize)).toEqual([1, 1, 2, 3, 4, 4, 4]);
  expect(poolSize(undefined)).toBe(3);
});
