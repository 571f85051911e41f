import { expect, test } from 'vitest';
import { Lattice } from '../../src/sight/lattice.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

const EXTENT = { left: -60, bottom: -40, right: 60, top: 40 };

/** Twice the triangle's area in whole numbers of any length. */
function twiceOf({ x, y }: Lattice, i: number, j: number, k: number): bigint {
  const [px, py] = [(at: number) => BigInt(x[at] ?? 0), (at: number) => BigInt(y[at] ?? 0)];
  return (px(j) - px(i)) * (py(k) - py(i)) - (py(j) - py(i)) * (px(k) - px(i));
}

test('sides are those of whole numbers, also a unit off a line of 100 m', () => {
  const chance = chanceFrom(41);
  const lattice = new Lattice(3, EXTENT);
  let nearly = 0;
  for (let trial = 0; trial < trials(5000, 200_000); trial += 1) {
    const [a, b, c, d] = [
      chance.between(-60, 60),
      chance.between(-40, 40),
      chance.between(-60, 60),
      chance.between(-40, 40),
    ];
    const share = chance.between(-0.2, 1.2);
    lattice.put(0, a, b);
    lattice.put(1, c, d);
    const off = chance.pick([0, 0, 1e-9, -1e-6, 5]);
    lattice.put(2, a + share * (c - a) + off, b + share * (d - b));
    const exact = twiceOf(lattice, 0, 1, 2);
    if (exact === 0n) continue;
    if (exact < 2n ** 40n && exact > -(2n ** 40n)) nearly += 1;
    expect(lattice.isLeft(0, 1, 2), `seed 41, trial ${trial}`).toBe(exact > 0n);
    expect(Math.abs(lattice.twice / Number(exact) - 1)).toBeLessThan(1e-6);
  }
  expect(nearly).toBeGreaterThan(1000);
});

test('three points in one line have one side, turned over with any two of them', () => {
  const lattice = new Lattice(3, EXTENT);
  const lines: readonly (readonly (readonly [number, number])[])[] = [
    [
      [1, 1],
      [2, 2],
      [4, 4],
    ],
    [
      [3, 0],
      [3, 0],
      [3, 5],
    ],
    [
      [7, 2],
      [7, 2],
      [7, 2],
    ],
    [
      [0, 6],
      [4, 6],
      [4, 6],
    ],
  ];
  for (const line of lines) {
    line.forEach(([a, b], at) => lattice.put(at, a, b));
    const side = lattice.isLeft(0, 1, 2);
    expect([lattice.isLeft(1, 2, 0), lattice.isLeft(2, 0, 1)]).toEqual([side, side]);
    expect([lattice.isLeft(1, 0, 2), lattice.isLeft(0, 2, 1), lattice.isLeft(2, 1, 0)]).toEqual([
      !side,
      !side,
      !side,
    ]);
  }
});
