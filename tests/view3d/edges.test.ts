import { describe, expect, test } from 'vitest';
import { CREASE, edgesOf, faceNormals, FINE } from '../../src/view3d/solids/edges.ts';
import { box, prism } from './shapes.ts';

const hard = (): boolean => false;

describe('edges worth drawing', () => {
  test('a box has its twelve, and no diagonal', () => {
    const { count, kind, from, to } = edgesOf([box('a', [0, 0, 0], [3, 2, 1])], [0, 0, 0], hard);
    expect(count).toBe(12);
    expect([...kind].every((one) => one === CREASE)).toBe(true);
    for (let i = 0; i < count; i += 1) {
      const differ = [0, 1, 2].filter((axis) => from[i * 3 + axis] !== to[i * 3 + axis]);
      expect(differ).toHaveLength(1);
    }
  });

  test('normals look outwards', () => {
    const normals = faceNormals(box('a', [0, 0, 0], [3, 2, 1]));
    expect(Array.from(normals.slice(0, 3))).toEqual([0, 0, -1]);
    expect(Array.from(normals.slice(6, 9))).toEqual([0, 0, 1]);
  });

  test('between faces that turn by less than 20° it is a fine line', () => {
    // 36 sides turn by 10°.
    const { kind, left, right } = edgesOf([prism('round', 36, 2, 3)], [0, 0, 0], hard);
    const upright = [...kind].filter(
      (_, i) => Math.abs(left[i * 3 + 2] ?? 0) + Math.abs(right[i * 3 + 2] ?? 0) < 1e-6,
    );
    expect(upright).toHaveLength(36);
    expect(upright.every((one) => one === FINE)).toBe(true);
    expect([...kind].filter((one) => one === CREASE)).toHaveLength(72);
  });

  test('faces that turn by less than a degree are one', () => {
    expect(edgesOf([prism('smooth', 720, 2, 3)], [0, 0, 0], hard).count).toBe(1440);
  });

  test('a soft solid has fine lines only', () => {
    expect([...edgesOf([box('a', [0, 0, 0], [1, 1, 1])], [0, 0, 0], () => true).kind]).toEqual(
      Array(12).fill(FINE),
    );
  });

  test('places are relative to the origin, so that single precision keeps them far away', () => {
    const far = box('a', [100_000, 50_000, 0], [100_001.001, 50_001, 1]);
    const { from, to } = edgesOf([far], [100_000, 50_000, 0], hard);
    expect(Math.max(...from, ...to)).toBeCloseTo(1.001, 6);
  });
});
