import { expect, test } from 'vitest';
import { horizontalPlane } from '../../src/base/plane.ts';
import { footingOf } from '../../src/sight/footing.ts';

test('a lens in its plane, or a nanometre off, counts as a micrometre off on its own side', () => {
  for (const off of [0, 1e-9, -1e-9, 9e-7, -9e-7]) {
    const { delta } = footingOf([1, 2, 3], horizontalPlane(3 + off));
    expect(Math.abs(delta)).toBe(1e-6);
    expect(delta > 0).toBe(off > 0);
  }
  expect(footingOf([1, 2, 3], horizontalPlane(0.5))).toMatchObject({ delta: -2.5, foot: [1, 2] });
});
