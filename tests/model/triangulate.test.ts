import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { triangulate } from '../../src/model/triangulate.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { star } from './randomStructures.ts';
import { rectangle } from './sampleStructures.ts';

const cut = (...rings: readonly (readonly Vec2[])[]): number[] | null => {
  const points = rings.flat();
  let start = 0;
  const loops = rings.map((ring) => ring.map(() => start++));
  return triangulate(
    loops,
    (id) => points[id]?.[0] ?? Number.NaN,
    (id) => points[id]?.[1] ?? Number.NaN,
  );
};

/** Edges of triangles whose other side is no triangle, sorted. */
const rim = (triangles: readonly number[]): string[] => {
  const edges = new Set<string>();
  for (let t = 0; t < triangles.length; t += 3) {
    for (let k = 0; k < 3; k++) edges.add(`${triangles[t + k]}>${triangles[t + ((k + 1) % 3)]}`);
  }
  const open = [...edges].filter((edge) => !edges.has(edge.split('>').reverse().join('>')));
  return open.sort((a, b) => a.localeCompare(b));
};
const rimOf = (...rings: readonly (readonly Vec2[])[]): string[] => {
  let start = 0;
  const edges = rings.flatMap((ring) => {
    const first = start;
    start += ring.length;
    return ring.map((_, k) => `${first + k}>${first + ((k + 1) % ring.length)}`);
  });
  return edges.sort((a, b) => a.localeCompare(b));
};

describe('triangulate', () => {
  test('uses corners on a straight run', () => {
    const square: Vec2[] = [
      [0, 0],
      [1, 0],
      [2, 0],
      [2, 2],
      [1, 2],
      [0, 2],
      [0, 1],
    ];
    const triangles = cut(square);
    expect(triangles).toHaveLength(3 * 5);
    expect(rim(triangles ?? [])).toEqual(rimOf(square));
  });
  test('uses every corner of random rings with straight runs and a hole', () => {
    for (let seed = 1; seed <= trials(500, 50_000); seed++) {
      const chance = chanceFrom(seed);
      const grid = (ring: readonly Vec2[]): Vec2[] =>
        ring.map(([x, y]) => [Math.round(x * 16), Math.round(y * 16)]);
      const outer = grid(star(chance, chance.whole(5, 20), 5, 9)).flatMap((a, k, all): Vec2[] => {
        const b = all[(k + 1) % all.length] ?? a;
        return chance.next() < 0.5 ? [a, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]] : [a];
      });
      const hole = grid(star(chance, chance.whole(3, 8), 1, 2.5)).reverse();
      const rings = chance.next() < 0.5 ? [outer] : [outer, hole];
      const triangles = cut(...rings);
      expect({ seed, rim: rim(triangles ?? []) }).toEqual({ seed, rim: rimOf(...rings) });
    }
  });
  test('gives up on rings that it cannot cut cleanly', () => {
    expect(
      cut([
        [0, 0],
        [4, 3],
        [4, 0],
        [0, 3],
        [-1, 1],
      ]),
    ).toBeNull();
    expect(cut(rectangle(2, 2), [...rectangle(2, 2, [1, 1])].reverse())).toBeNull();
    expect(cut([...rectangle(2, 2)].reverse())).toBeNull();
  });
});
