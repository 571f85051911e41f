import { describe, expect, it } from 'vitest';
import type { Solid } from '../../src/model/solid.ts';
import { coursesOf } from '../../src/view3d/solids/courses.ts';
import { box } from './shapes.ts';

/** A gable of 45° over x from 0 to 6, 8 m long, eaves at 2.4 m. */
const roof: Solid = {
  ...box('roof', [0, 0, 0], [1, 1, 1]),
  positions: Float64Array.of(0, 0, 2.4, 6, 0, 2.4, 3, 0, 5.4, 0, 8, 2.4, 6, 8, 2.4, 3, 8, 5.4),
  triangles: Uint32Array.of(0, 2, 5, 0, 5, 3, 1, 4, 5, 1, 5, 2, 0, 1, 2, 3, 5, 4, 0, 3, 4, 0, 4, 1),
};

const segments = (lines: readonly number[]) =>
  Array.from({ length: lines.length / 6 }, (_, i) => lines.slice(i * 6, i * 6 + 6));

describe('coursesOf', () => {
  it('draws level lines, .9 m apart along the slope, the length of the roof', () => {
    const made = segments(coursesOf(roof));
    const levels = [...new Set(made.map(([, , z = 0]) => z.toFixed(6)))].map(Number).sort((a, b) => a - b);
    for (const [, , z = 0, , , w = 1] of made) expect(w).toBeCloseTo(z, 9);
    // 3 m of rise at 45° is 4.24 m of slope: four or five lines.
    expect(levels.length).toBe(5);
    levels.slice(1).forEach((z, i) => expect((z - (levels[i] ?? 0)) * Math.SQRT2).toBeCloseTo(0.9, 5));
    const ofOne = made.filter(([, , z = 0]) => Math.abs(z - (levels[0] ?? 0)) < 1e-6);
    const long = ofOne.reduce(
      (sum, [x0 = 0, y0 = 0, , x1 = 0, y1 = 0]) => sum + Math.hypot(x1 - x0, y1 - y0),
      0,
    );
    expect(long).toBeCloseTo(16, 6);
  });

  it('lies on the planes', () => {
    for (const [x = 0, , z = 0] of segments(coursesOf(roof)))
      expect(Math.abs(2.4 + Math.min(x, 6 - x) - z)).toBeLessThan(1e-9);
  });

  it('leaves flat tops and walls bare', () => {
    expect(coursesOf(box('house', [0, 0, 0], [4, 3, 2.5]))).toEqual([]);
  });
});
