import { expect, test } from 'vitest';
import { chanceFrom, isThorough, trials } from './seeded.ts';

test('one seed gives one sequence, another seed another', () => {
  const draw = (seed: number): number[] => {
    const chance = chanceFrom(seed);
    return Array.from({ length: 5 }, () => chance.next());
  };
  expect(draw(7)).toEqual(draw(7));
  expect(draw(7)).not.toEqual(draw(8));
});

test('the numbers fill their range evenly, for small seeds too', () => {
  const chance = chanceFrom(1);
  const counts = Array.from({ length: 10 }, () => 0);
  for (let draw = 0; draw < 20_000; draw += 1) {
    const bin = Math.floor(chance.next() * 10);
    counts[bin] = (counts[bin] ?? 0) + 1;
  }
  expect(counts).toHaveLength(10);
  // 2000 expected, standard deviation 42: five of them.
  for (const count of counts) expect(Math.abs(count - 2000)).toBeLessThan(212);
});

test('whole numbers reach both ends and pass neither', () => {
  const chance = chanceFrom(3);
  const drawn = new Set(Array.from({ length: 200 }, () => chance.whole(-1, 2)));
  expect([...drawn].sort((a, b) => a - b)).toEqual([-1, 0, 1, 2]);
});

test('picking from an empty list is a bug that says so', () => {
  expect(() => chanceFrom(1).pick([])).toThrow('empty');
});

test('the sample runs in npm test, the whole in npm run thorough', () => {
  expect(trials(3, 300)).toBe(isThorough ? 300 : 3);
});
