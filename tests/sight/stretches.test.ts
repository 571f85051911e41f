import { expect, test } from 'vitest';
import { halfPlanesOf } from '../../src/sight/halfPlanes.ts';
import { Stretches, withinHalfPlanes } from '../../src/sight/spans.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

/** What is left, as pairs. */
const left = (stretches: Stretches): [number, number][] => {
  const all: [number, number][] = [];
  stretches.each((from, to) => all.push([from, to]));
  return all;
};

test('what is left of a stretch is what none of the removed pieces covers, unit by unit', () => {
  const chance = chanceFrom(81);
  const stretches = new Stretches();
  for (let trial = 0; trial < trials(400, 20_000); trial += 1) {
    const [start, end] = [chance.whole(0, 10), chance.whole(11, 40)];
    stretches.reset(start, end);
    const units = Array.from({ length: 41 }, (_, at) => at >= start && at < end);
    for (let piece = chance.whole(1, 8); piece > 0; piece -= 1) {
      const from = chance.whole(-2, 40);
      const to = from + chance.whole(-2, 9);
      stretches.remove(from, to);
      for (let at = Math.max(0, from); at < Math.min(41, to); at += 1) units[at] = false;
      // Rises and falls of the units: where stretches begin and end.
      const begins = units.flatMap((free, at) => (free && units[at - 1] !== true ? [at] : []));
      const ends = units.flatMap((free, at) => (!free && units[at - 1] === true ? [at] : []));
      const name = `seed 81, trial ${trial}`;
      expect(left(stretches), `${name}`).toEqual(begins.map((begin, at) => [begin, ends[at]]));
      expect(stretches.empty, `${name}`).toBe(begins.length === 0);
      expect([stretches.first, stretches.last], `${name}`).toEqual([
        begins[0] ?? Number.NaN,
        ends.at(-1) ?? Number.NaN,
      ]);
    }
  }
});

test('a stretch of no length is none', () => {
  const stretches = new Stretches();
  stretches.reset(3, 5);
  for (const [from, to] of [
    [2, 2],
    [2, 1],
  ] as const) {
    stretches.reset(from, to);
    expect([stretches.empty, left(stretches)]).toEqual([true, []]);
  }
});

test('a line lies within half-planes where its places do', () => {
  const chance = chanceFrom(82);
  let crossed = 0;
  for (let trial = 0; trial < trials(400, 20_000); trial += 1) {
    const turn = chance.between(0, 7);
    const corners = [0, 2, 4].map((add) => {
      const [x, y, far] = [chance.between(-3, 3), chance.between(-3, 3), chance.between(4, 9)];
      return [x + far * Math.cos(turn + add), y + far * Math.sin(turn + add)] as const;
    });
    const angle = chance.between(0, 7);
    const line = { a: Math.cos(angle), b: Math.sin(angle), k: chance.between(-4, 4) };
    const [from, to] = withinHalfPlanes(line, halfPlanesOf(corners), 20);
    // By the sense of the corners around a place of the line, none of which is a half-plane of ours.
    const holds = (t: number): boolean => {
      const [p, q] = [-line.k * line.a + t * line.b, -line.k * line.b - t * line.a];
      return corners.every(([ax, ay], at) => {
        const [bx, by] = corners[(at + 1) % 3] ?? [ax, ay];
        return (bx - ax) * (q - ay) - (by - ay) * (p - ax) >= 0;
      });
    };
    for (let t = -20; t <= 20; t += 0.37) {
      if (Math.min(Math.abs(t - from), Math.abs(t - to)) < 1e-6) continue;
      expect(t > from && t < to, `seed 82, trial ${trial}, ${t}`).toBe(holds(t));
    }
    if (from < to) crossed += 1;
  }
  expect(crossed).toBeGreaterThan(trials(400, 20_000) / 4);
});

test('a line along an edge is within, a millimetre outside of it is not', () => {
  const square = halfPlanesOf([
    [0, 0],
    [4, 0],
    [4, 2],
    [0, 2],
  ]);
  // y + k = 0 with its direction (1, 0).
  const along = (y: number) => withinHalfPlanes({ a: 0, b: 1, k: -y }, square, 10);
  expect(along(0)).toEqual([expect.closeTo(0, 12), expect.closeTo(4, 12)]);
  expect(along(2)).toEqual([expect.closeTo(0, 12), expect.closeTo(4, 12)]);
  for (const y of [-0.001, 2.001]) {
    const [from, to] = along(y);
    expect(from >= to, `${y}`).toBe(true);
  }
});
