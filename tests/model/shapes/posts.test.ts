import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../src/base/vector.ts';
import { MOST_POSTS, postCount, postsAlong } from '../../../src/model/shapes/posts.ts';
import { solidsOf } from '../../../src/model/solids.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { meshFaults, volumeOf } from '../meshChecks.ts';

const centre = (ring: readonly Vec2[]): Vec2 => [
  ring.reduce((sum, [x]) => sum + x / ring.length, 0),
  ring.reduce((sum, [, y]) => sum + y / ring.length, 0),
];

describe('postsAlong', () => {
  test('puts the first and the last at the ends and the others evenly between', () => {
    for (let seed = 1; seed <= trials(200, 5000); seed++) {
      const chance = chanceFrom(seed);
      const place = (): Vec2 => [chance.between(-50, 50), chance.between(-50, 50)];
      const [from, to] = [place(), place()];
      const thickness = chance.between(0.05, 0.3);
      const count = chance.whole(2, 12);
      const posts = postsAlong({ from, to, count, thickness, height: 1.1, name: 'Bollard' });
      const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      const room = Math.floor(length / (1.5 * thickness)) + 1;
      expect(posts).toHaveLength(Math.min(count, room));
      posts.forEach(({ outline }, k) => {
        const share = posts.length > 1 ? k / (posts.length - 1) : 0.5;
        const [x, y] = centre(outline);
        expect(x).toBeCloseTo(from[0] + share * (to[0] - from[0]), 9);
        expect(y).toBeCloseTo(from[1] + share * (to[1] - from[1]), 9);
      });
      const [first] = posts;
      const [solid] = first ? solidsOf(first).solids : [];
      if (!solid) throw new Error(`seed ${seed}`);
      expect(meshFaults(solid)).toEqual([]);
      expect(volumeOf(solid)).toBeCloseTo(thickness * thickness * 1.1, 9);
    }
  });
  test('names them in order, stands one alone in the middle, and none where none is asked for', () => {
    const row = { from: [0, 0], to: [0, 6], thickness: 0.2, height: 1, name: 'Post' } as const;
    expect(postsAlong({ ...row, count: 3 }).map(({ id, name }) => [id, name])).toEqual([
      ['post-1', 'Post 1'],
      ['post-2', 'Post 2'],
      ['post-3', 'Post 3'],
    ]);
    const [alone] = postsAlong({ ...row, count: 1 });
    expect(alone && centre(alone.outline)[1]).toBeCloseTo(3, 12);
    expect(postsAlong({ ...row, count: 0 })).toEqual([]);
    expect(postsAlong({ ...row, to: [0, 900], count: 9999 })).toHaveLength(MOST_POSTS);
    expect(() => postsAlong({ ...row, to: [0, 0], count: 2 })).toThrow(RangeError);
  });
  test('leaves out as many as would stand in one another', () => {
    const posts = postsAlong({
      from: [0, 0],
      to: [1, 0],
      count: 50,
      thickness: 0.2,
      height: 1,
      name: 'Post',
    });
    expect(posts).toHaveLength(4);
    const xs = posts.map(({ outline }) => centre(outline)[0]);
    xs.slice(1).forEach((x, k) => expect(x - (xs[k] ?? 0)).toBeGreaterThan(0.29));
  });
});

test('postCount keeps to a spacing, both ends included', () => {
  expect(postCount(6, 1.5)).toBe(5);
  expect(postCount(6.1, 1.5)).toBe(6);
  expect(postCount(0.3, 0.1)).toBe(4);
  expect(postCount(0, 1)).toBe(1);
});
