import { describe, expect, test } from 'vitest';
import { discSpots } from '../../src/view3d/labels/discSpots.ts';

describe('discs beside cameras', () => {
  test('a lone one stands up and right', () => {
    const [disc] = discSpots([{ x: 200, y: 200 }], 400, 400);
    expect(disc?.x).toBeGreaterThan(200);
    expect(disc?.y).toBeLessThan(200);
  });

  test('none meets another disc or another camera, and all stay in the window', () => {
    const bodies = [0, 1, 2, 3, 4].map((i) => ({ x: 30 + i * 34, y: 40 + (i % 2) * 20 }));
    const discs = discSpots(bodies, 400, 300);
    discs.forEach((disc, i) => {
      expect(Math.min(disc.x, disc.y)).toBeGreaterThan(12);
      [...discs.filter((_, j) => j !== i), ...bodies.filter((_, j) => j !== i)].forEach((other) =>
        expect(Math.hypot(disc.x - other.x, disc.y - other.y)).toBeGreaterThan(24),
      );
    });
  });
});
