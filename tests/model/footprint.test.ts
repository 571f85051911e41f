import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { validFootprint } from '../../src/model/footprint.ts';
import { signedArea } from '../../src/model/ring.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { star } from './randomStructures.ts';
import { rectangle } from './sampleStructures.ts';

const read = (outline: readonly Vec2[], holes: readonly (readonly Vec2[])[] = []) =>
  validFootprint(outline, holes, 'House');
const good = (outline: readonly Vec2[], holes: readonly (readonly Vec2[])[] = []) => {
  const outcome = read(outline, holes);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome;
};
const faultsOf = (outline: readonly Vec2[], holes: readonly (readonly Vec2[])[] = []) => {
  const outcome = read(outline, holes);
  return outcome.ok ? [] : outcome.faults.map(({ code, path, given }) => [code, path, given]);
};

const toldOf = (outline: readonly Vec2[], holes: readonly (readonly Vec2[])[] = []) =>
  faultsOf(outline, holes).map(([code, path]) => [code, path]);

describe('validFootprint', () => {
  test('keeps a good outline as it is', () => {
    expect(good(rectangle(4, 3)).value).toEqual({
      outline: rectangle(4, 3),
      holes: [],
      edges: [0, 1, 2, 3],
      reversed: false,
    });
  });
  test('turns a clockwise outline and keeps the numbers of its edges', () => {
    const { value } = good([...rectangle(4, 3)].reverse());
    expect(signedArea(value.outline)).toBe(12);
    expect(value).toMatchObject({ outline: rectangle(4, 3), edges: [2, 1, 0, 3], reversed: true });
  });
  test('runs holes clockwise', () => {
    expect(good(rectangle(9, 9), [rectangle(2, 2, [3, 3])]).value.holes.map(signedArea)).toEqual([-4]);
  });
  test('drops repeated corners with a note each, and keeps the numbers of the edges', () => {
    const outline: Vec2[] = [
      [0, 0],
      [4, 0],
      [4, 0],
      [4, 3],
      [0, 3],
      [0, 0],
    ];
    const { value, notes } = good(outline);
    expect(value).toMatchObject({ outline: rectangle(4, 3), edges: [0, 2, 3, 4] });
    expect(notes.map(({ code, path }) => [code, path])).toEqual([
      ['footprint.repeated', ['outline', 2]],
      ['footprint.repeated', ['outline', 5]],
    ]);
  });
  test('keeps corners on a straight run, since faces are counted by corner', () => {
    expect(
      good([
        [0, 0],
        [2, 0],
        [4, 0],
        [4, 3],
        [0, 3],
      ]).value.outline,
    ).toHaveLength(5);
  });
  test('names the corners between which an outline crosses itself', () => {
    expect(
      faultsOf([
        [0, 0],
        [4, 3],
        [4, 0],
        [0, 3],
      ]),
    ).toEqual([['footprint.crosses', ['outline', 0], 'corners 1 to 2 and corners 3 to 4']]);
  });
  test('names the corners between which an outline touches itself', () => {
    expect(
      faultsOf([
        [0, 0],
        [6, 0],
        [6, 4],
        [3, 0],
        [0, 4],
      ]),
    ).toEqual([['footprint.touches', ['outline', 3], 'corner 4 and corners 1 to 2']]);
  });
  test('refuses a spike, which encloses nothing', () => {
    expect(
      faultsOf([
        [0, 0],
        [4, 0],
        [8, 0],
        [3, 0],
        [4, 3],
      ]),
    ).toEqual([['footprint.touches', ['outline', 1], 'corner 2 and corners 3 to 4']]);
  });
  test('refuses fewer than three corners, repeats not counted', () => {
    expect(
      faultsOf([
        [0, 0],
        [1, 0],
      ]),
    ).toMatchObject([['footprint.corners', ['outline'], 2]]);
    expect(
      faultsOf([
        [0, 0],
        [1, 0],
        [1, 0],
        [0, 0],
      ]),
    ).toMatchObject([['footprint.corners', ['outline'], 2]]);
    expect(faultsOf([])).toMatchObject([['footprint.corners', ['outline'], 0]]);
  });
  test('refuses an outline without area', () => {
    expect(
      toldOf([
        [0, 0],
        [0.01, 0],
        [0, 0.01],
      ]),
    ).toEqual([['footprint.area', ['outline']]]);
  });
  test('refuses coordinates that are no numbers or too far away, each by its corner', () => {
    expect(
      faultsOf([
        [0, 0],
        [Number.NaN, 0],
        [4, 3],
        [0, 200_000],
      ]),
    ).toEqual([
      ['size.number', ['outline', 1], 'NaN'],
      ['size.far', ['outline', 3], 200_000],
    ]);
  });
  test('refuses holes outside, across, on the outline, or in one another', () => {
    const outline = rectangle(10, 10);
    expect(toldOf(outline, [rectangle(2, 2, [20, 0])])).toEqual([
      ['footprint.hole-outside', ['holes', 0, 0]],
    ]);
    expect(toldOf(outline, [rectangle(4, 2, [8, 1])])).toEqual([['footprint.crosses', ['outline', 1]]]);
    expect(toldOf(outline, [rectangle(2, 2, [8, 1])])).toEqual([['footprint.touches', ['holes', 0, 1]]]);
    expect(toldOf(outline, [rectangle(5, 5, [1, 1]), rectangle(1, 1, [2, 2])])).toEqual([
      ['footprint.hole-in-hole', ['holes', 1, 0]],
    ]);
    expect(toldOf(outline, [rectangle(3, 3, [1, 1]), rectangle(3, 3, [2, 2])])).toEqual([
      ['footprint.crosses', ['holes', 0, 2]],
    ]);
  });

  test('agrees with every pair of edges tried in whole numbers, on a small grid where touching is common', () => {
    const count = { good: 0, bad: 0 };
    for (let seed = 1; seed <= trials(3000, 300_000); seed++) {
      const chance = chanceFrom(seed);
      const ring = Array.from({ length: chance.whole(3, 7) }, (): Vec2 => [
        chance.whole(0, 5),
        chance.whole(0, 5),
      ]);
      const simple = isSimple(ring);
      count[simple ? 'good' : 'bad']++;
      expect({ seed, ring, ok: read(ring).ok }).toEqual({ seed, ring, ok: simple });
    }
    expect(count.good).toBeGreaterThan(100);
    expect(count.bad).toBeGreaterThan(100);
  });

  test('reads 2,000 corners in the time of a blink', () => {
    const ring = star(chanceFrom(5), 2000, 50, 60);
    read(ring);
    const start = performance.now();
    expect(read(ring).ok).toBe(true);
    expect(performance.now() - start).toBeLessThan(1000);
  });
});

/** Reference: no repeated corner but neighbours, and no two edges share a point but neighbours at their corner. */
function isSimple(given: readonly Vec2[]): boolean {
  const same = (a: Vec2 | undefined, b: Vec2 | undefined): boolean => a?.[0] === b?.[0] && a?.[1] === b?.[1];
  const ring = given.filter((corner, k) => k === 0 || !same(corner, given[k - 1]));
  while (ring.length > 1 && same(ring[0], ring[ring.length - 1])) ring.pop();
  if (ring.length < 3) return false;
  const at = (k: number): Vec2 => ring[k % ring.length] ?? [0, 0];
  const side = (a: Vec2, b: Vec2, c: Vec2): number =>
    Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
  const within = (p: Vec2, a: Vec2, b: Vec2): boolean =>
    side(a, b, p) === 0 && (p[0] - a[0]) * (p[0] - b[0]) <= 0 && (p[1] - a[1]) * (p[1] - b[1]) <= 0;
  for (let i = 0; i < ring.length; i++) {
    for (let j = i + 1; j < ring.length; j++) {
      const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
      if (j === i + 1 || (i === 0 && j === ring.length - 1)) {
        const [far, near] = j === i + 1 ? [d, a] : [c, b];
        const [one, other] =
          j === i + 1 ? [[a, b] as const, [c, d] as const] : [[a, b] as const, [c, d] as const];
        if (within(far, ...one) || within(near, ...other)) return false;
        continue;
      }
      if (within(a, c, d) || within(b, c, d) || within(c, a, b) || within(d, a, b)) return false;
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return false;
    }
  }
  return true;
}
