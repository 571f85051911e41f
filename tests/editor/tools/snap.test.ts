import { describe, expect, test } from 'vitest';
import { cornerNames } from '../../../src/editor/tools/mount/cornerNames.ts';
import { gridStep, snap } from '../../../src/editor/tools/snap.ts';

describe('snapping', () => {
  test.each([
    [0.001, 0.01],
    [0.005, 0.05],
    [0.01, 0.1],
    [0.03, 0.5],
    [0.1, 1],
    [0.5, 5],
    [9, 5],
  ])('at %f m a pixel the grid is %f m: the smallest that is 8 px wide', (size, step) => {
    expect(gridStep(size)).toBe(step);
  });

  test('the nearest candidate in reach goes before the grid', () => {
    const middle = { value: 5.5, pixels: 10, name: 'middle' };
    const door = { value: 5.45, pixels: 6, name: 'centre of Door' };
    expect(snap(5.46, [middle, door], 0.01, false)).toEqual({ value: 5.45, name: 'centre of Door' });
    expect(snap(5.59, [middle, door], 0.01, false)).toEqual({ value: 5.5, name: 'middle' });
    expect(snap(5.64, [middle, door], 0.01, false)).toEqual({ value: 5.6, name: null });
  });

  test('with snapping off a millimetre is kept', () => {
    expect(snap(5.4567, [{ value: 5.5, pixels: 50, name: 'middle' }], 0.01, true)).toEqual({
      value: 5.457,
      name: null,
    });
  });

  test('the ends of a wall are named by where they lie', () => {
    expect(cornerNames({ along: [1, 0, 0] })).toEqual({ start: 'west', end: 'east' });
    expect(cornerNames({ along: [-0.7, 0.7, 0] })).toEqual({ start: 'south-east', end: 'north-west' });
  });
});
