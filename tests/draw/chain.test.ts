import { describe, expect, test } from 'vitest';
import { chainSegments } from '../../src/draw/chain.ts';

describe('chaining segments', () => {
  test('an open chain runs from end to end', () => {
    expect(
      chainSegments([
        [3, 4],
        [1, 2],
        [3, 2],
      ]),
    ).toEqual([[4, 3, 2, 1]]);
  });

  test('a ring repeats its first point', () => {
    const [ring] = chainSegments([
      [1, 2],
      [2, 3],
      [3, 1],
    ]);
    expect(ring).toHaveLength(4);
    expect(ring?.[0]).toBe(ring?.[3]);
  });

  test('each segment is used once, in chains of their own', () => {
    expect(
      chainSegments([
        [1, 2],
        [5, 6],
        [2, 3],
        [6, 7],
      ]),
    ).toHaveLength(2);
    expect(chainSegments([])).toEqual([]);
  });
});
