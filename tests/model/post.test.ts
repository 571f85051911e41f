import { describe, expect, test } from 'vitest';
import { insideSolid } from '../../src/model/inside.ts';
import { placeMount } from '../../src/model/mounting.ts';
import { postSolid } from '../../src/model/post.ts';
import { chanceFrom } from '../house/seeded.ts';
import { meshFaults } from './meshChecks.ts';
import { NO_LIMITS } from '../../src/optics/mount.ts';

const pole = {
  kind: 'pole',
  at: [4, 5],
  height: 3.5,
  reach: 0.4,
  facing: 120,
  diameter: 0.12,
  limits: NO_LIMITS,
} as const;

describe('postSolid', () => {
  test('stands from the ground to the lens, as wide as its diameter on average', () => {
    const post = postSolid('cam', 'Gate camera', pole, 1);
    expect(meshFaults(post)).toEqual([]);
    expect(post).toMatchObject({
      id: 'cam.post',
      structure: 'cam',
      name: 'Post of Gate camera',
      passage: 'solid',
    });
    const zs = post.positions.filter((_, k) => k % 3 === 2);
    expect([Math.min(...zs), Math.max(...zs)]).toEqual([1, 4.5]);
    // Mean over all directions of how wide the post looks.
    let sum = 0;
    for (let degrees = 0; degrees < 180; degrees++) {
      const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const across: number[] = [];
      for (let k = 0; k < post.positions.length; k += 3) {
        across.push((post.positions[k] ?? 0) * c + (post.positions[k + 1] ?? 0) * s);
      }
      sum += Math.max(...across) - Math.min(...across);
    }
    expect(sum / 180).toBeCloseTo(0.12, 4);
  });
  test('never holds its own lens, whichever way it faces', () => {
    const chance = chanceFrom(11);
    for (let k = 0; k < 50; k++) {
      const mount = {
        ...pole,
        reach: 0,
        facing: chance.between(0, 360),
        diameter: chance.between(0.05, 0.5),
      };
      const placed = placeMount(mount, {});
      if (!placed.ok) throw new Error('a pole needs no host');
      const [x, y, z] = placed.value.eye;
      expect(insideSolid(postSolid('cam', 'Camera', mount), [x, y, z - 0.001])).toBe(false);
    }
  });
  test('throws on a size that makes no post', () => {
    expect(() => postSolid('cam', 'Camera', { ...pole, height: 0 })).toThrow(RangeError);
    expect(() => postSolid('cam', 'Camera', { ...pole, diameter: -1 })).toThrow(RangeError);
  });
});
