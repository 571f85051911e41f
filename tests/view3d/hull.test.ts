import { describe, expect, test } from 'vitest';
import { hullOf } from '../../src/view3d/ground/hull.ts';
import { chanceFrom } from '../house/seeded.ts';

describe('the outline of points', () => {
  test('runs counter-clockwise and holds every point (seed 2)', () => {
    const chance = chanceFrom(2);
    for (let i = 0; i < 100; i += 1) {
      const points = Array.from({ length: 8 }, () => ({ x: chance.between(0, 9), y: chance.between(0, 9) }));
      const hull = hullOf(points);
      hull.forEach((a, at) => {
        const b = hull[(at + 1) % hull.length] ?? a;
        for (const p of points)
          expect((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)).toBeGreaterThan(-1e-9);
      });
    }
  });

  test('leaves out points on a side', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 2, y: 0 },
      { x: 1, y: 0 },
      { x: 2, y: 2 },
      { x: 0, y: 2 },
    ];
    expect(hullOf(square)).toHaveLength(4);
  });
});
