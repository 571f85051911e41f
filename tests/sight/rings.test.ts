import { expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { chain, ringArea } from '../../src/sight/rings.ts';
import { areaWithin, straightRings } from '../../src/sight/arcRings.ts';
import { chanceFrom } from '../house/seeded.ts';

/** The edges of rings as pieces, mixed up, their ends apart by less than a ten-millionth of a metre. */
function pieces(rings: readonly (readonly Vec2[])[], seed: number) {
  const chance = chanceFrom(seed);
  const off = (): number => chance.between(-1e-7, 1e-7);
  const all = rings.flatMap((ring) =>
    ring.map(([x, y], at) => {
      const [nx, ny] = ring[(at + 1) % ring.length] ?? [x, y];
      return { from: [x + off(), y + off()] as const, to: [nx + off(), ny + off()] as const, beyond: 0 };
    }),
  );
  return all
    .map((piece) => ({ piece, at: chance.next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ piece }) => piece);
}

const square = (x: number, y: number, size: number): Vec2[] => [
  [x, y],
  [x + size, y],
  [x + size, y + size],
  [x, y + size],
];

const areas = (rings: readonly Float64Array[]): number[] =>
  rings.map((ring) => Math.round(ringArea(ring) * 1e4) / 1e4).sort((a, b) => a - b);

test('the area of a ring is positive counter-clockwise, wherever it begins', () => {
  for (let begin = 0; begin < 5; begin += 1) {
    const ring = [
      [0, 0],
      [4, 0],
      [4, 1],
      [1, 1],
      [0, 3],
    ];
    const turned = [...ring.slice(begin), ...ring.slice(0, begin)];
    // By hand: 4 × 1 and a triangle of 1 × 2 on it.
    expect(ringArea(Float64Array.from(turned.flat()))).toBeCloseTo(5, 12);
    expect(ringArea(Float64Array.from(turned.toReversed().flat()))).toBeCloseTo(-5, 12);
  }
});

test('pieces in any order become the rings that they were cut from', () => {
  for (let seed = 1; seed <= 20; seed += 1) {
    const { rings, closed } = chain(
      pieces([square(0, 0, 10), square(2, 2, 3).toReversed(), square(20, -5, 2), square(0, 11, 1)], seed),
    );
    expect(closed).toBe(true);
    expect(areas(rings)).toEqual([-9, 1, 4, 100]);
  }
});

test('rings that meet in a corner stay apart where they can: each goes on as far left as it may', () => {
  for (let seed = 1; seed <= 20; seed += 1) {
    // Two outer squares corner to corner, and a hole whose corner touches its outer ring.
    const { rings, closed } = chain(
      pieces(
        [
          square(0, 0, 4),
          square(4, 4, 2),
          square(30, 0, 6),
          [
            [30, 0],
            [31, 3],
            [33, 2],
          ].map(([x, y]) => [x ?? 0, y ?? 0] as const),
        ],
        seed,
      ),
    );
    expect(closed).toBe(true);
    expect(rings.reduce((sum, ring) => sum + ringArea(ring), 0)).toBeCloseTo(16 + 4 + 36 - 3.5, 4);
    expect(areas(rings).slice(-2)).toContain(16);
  }
});

test('a piece that is missing leaves the rings open, and what is no longer than a corner is left out', () => {
  const all = pieces([square(0, 0, 5)], 3);
  expect(chain(all).closed).toBe(true);
  for (let at = 0; at < 4; at += 1) expect(chain(all.filter((_, other) => other !== at)).closed).toBe(false);
  const stub = { from: [1, 1] as const, to: [1, 1 + 5e-7] as const, beyond: 0 };
  expect(chain([...all, stub])).toEqual(chain(all));
});

test('a step of five micrometres between two pieces is a gap', () => {
  const ring = square(0, 0, 5);
  const step = pieces([ring], 3).map((piece) =>
    piece.from[0] > 4 && piece.from[1] < 1 ? { ...piece, from: [5 + 5e-6, 0] as const } : piece,
  );
  expect(chain(step).closed).toBe(false);
});

test('a ring has three corners at least: triangles are kept, and what has two is none', () => {
  const triangle = [
    [0, 0],
    [4, 0],
    [0, 3],
  ].map(([x, y]) => [x ?? 0, y ?? 0] as const);
  const { rings, closed } = chain(pieces([triangle], 5));
  expect([closed, areas(rings)]).toEqual([true, [6]]);
  expect(areaWithin(straightRings(rings))).toBeCloseTo(6, 5);
  const thereAndBack = Float64Array.of(0, 0, 1, 1);
  expect(straightRings([thereAndBack, ...rings]).starts.length).toBe(2);
  expect(chain(pieces([triangle.slice(0, 2)], 5)).rings).toEqual([]);
});

test('rings of three corners stay, and rings whose corners share a number in the hash keep apart', () => {
  const triangle: Vec2[] = [
    [0, 0],
    [3, 0],
    [0, 4],
  ];
  const { rings } = chain(pieces([triangle], 5));
  expect(areas(rings)).toEqual([6]);
  expect(areaWithin(straightRings(rings))).toBeCloseTo(6, 5);
  // A micrometre east and 33.554467 m south of a corner lies one of the same number.
  const [near, far] = [square(0, 0, 10), square(1e-6, -33.554467, 10)];
  const edges = (ring: readonly Vec2[]) =>
    ring.map((from, at) => ({ from, to: ring[(at + 1) % ring.length] ?? from, beyond: 0 }));
  const [first, ...rest] = edges(near);
  if (first === undefined) throw new Error('a square has edges');
  // The other ring's pieces stand before those that go on.
  expect(areas(chain([first, ...edges(far), ...rest]).rings)).toEqual([100, 100]);
});
