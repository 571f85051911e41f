import type { Vec2 } from '../../src/base/vector.ts';
import type { Chance } from '../house/seeded.ts';
import { star } from './randomStructures.ts';
import { rectangle, turned } from './sampleStructures.ts';

export interface Plan {
  readonly outline: readonly Vec2[];
  readonly holes: readonly (readonly Vec2[])[];
}

/** Two sizes that are one number half of the time: in houses many things happen at once. */
const pair = (chance: Chance, low: number, high: number): [number, number] => {
  const first = chance.between(low, high);
  return [first, chance.next() < 0.5 ? first : chance.between(low, high)];
};

export const lShape = (chance: Chance): Vec2[] => {
  const [a, b] = pair(chance, 4, 14);
  const [p, q] = pair(chance, 1, 0.75 * Math.min(a, b));
  return [
    [0, 0],
    [a, 0],
    [a, p],
    [q, p],
    [q, b],
    [0, b],
  ];
};

export const tShape = (chance: Chance): Vec2[] => {
  const stem = chance.between(1, 8);
  const deep = chance.between(1, 8);
  const [left, right] = pair(chance, 0.5, 6);
  const bar = chance.between(1, 6);
  return [
    [0, 0],
    [stem, 0],
    [stem, deep],
    [stem + right, deep],
    [stem + right, deep + bar],
    [-left, deep + bar],
    [-left, deep],
    [0, deep],
  ];
};

/** A spine with teeth: two make a U. */
export const comb = (chance: Chance): Vec2[] => {
  const teeth = chance.whole(2, 5);
  const [wide, gap] = pair(chance, 1, 4);
  const spine = chance.between(0.8, 4);
  const step = wide + gap;
  const isEven = chance.next() < 0.5;
  const length = chance.between(1, 6);
  const ring: Vec2[] = [
    [0, 0],
    [(teeth - 1) * step + wide, 0],
  ];
  for (let k = teeth - 1; k >= 0; k--) {
    const top = spine + (isEven ? length : chance.between(1, 6));
    ring.push([k * step + wide, top], [k * step, top]);
    if (k > 0) ring.push([k * step, spine], [(k - 1) * step + wide, spine]);
  }
  return ring;
};

/** A house with a bay on one side. */
export const bayed = (chance: Chance): Vec2[] => {
  const [left, right] = pair(chance, 1, 5);
  const bay = chance.between(1, 6);
  const out = chance.between(0.4, 3);
  const deep = chance.between(3, 9);
  return [
    [0, 0],
    [left, 0],
    [left, -out],
    [left + bay, -out],
    [left + bay, 0],
    [left + bay + right, 0],
    [left + bay + right, deep],
    [0, deep],
  ];
};

const cross = ([ax, ay]: Vec2, [bx, by]: Vec2, [cx, cy]: Vec2): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);

const cut = (a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean =>
  cross(a, b, c) * cross(a, b, d) <= 0 && cross(c, d, a) * cross(c, d, b) <= 0;

export const areaOf = (ring: readonly Vec2[]): number =>
  ring.reduce((sum, [x, y], k) => {
    const [nx, ny] = ring[(k + 1) % ring.length] ?? [x, y];
    return sum + (x * ny - y * nx) / 2;
  }, 0);

/** Random points joined, and crossings taken out by turning round what lies between, until none is left. */
export const uncrossed = (chance: Chance): Vec2[] => {
  const count = chance.whole(4, 18);
  let ring = Array.from({ length: count }, (): Vec2 => [chance.between(-10, 10), chance.between(-10, 10)]);
  const at = (k: number): Vec2 => ring[k % count] ?? [0, 0];
  const crossing = (): [number, number] | null => {
    for (let i = 0; i < count; i++) {
      for (let j = i + 2; j < count; j++) {
        if (i === 0 && j === count - 1) continue;
        if (cut(at(i), at(i + 1), at(j), at(j + 1))) return [i, j];
      }
    }
    return null;
  };
  for (let found = crossing(); found; found = crossing()) {
    const [i, j] = found;
    ring = [...ring.slice(0, i + 1), ...ring.slice(i + 1, j + 1).reverse(), ...ring.slice(j + 1)];
  }
  return areaOf(ring) < 0 ? ring.reverse() : ring;
};

const courtyard = (chance: Chance): Plan => {
  const [a, b] = pair(chance, 8, 16);
  const [m, n] = pair(chance, 1.5, 3);
  return { outline: rectangle(a, b), holes: [rectangle(a - 2 * m, b - 2 * n, [m, n]).reverse()] };
};

const wildCourtyard = (chance: Chance): Plan => ({
  outline: star(chance, chance.whole(9, 20), 6, 12),
  holes: [star(chance, chance.whole(3, 9), 0.5, 2.5).reverse()],
});

const plain =
  (make: (chance: Chance) => Vec2[]) =>
  (chance: Chance): Plan => ({ outline: make(chance), holes: [] });

const SHAPES: readonly ((chance: Chance) => Plan)[] = [
  plain((chance) => rectangle(...pair(chance, 2, 20))),
  plain(lShape),
  plain(tShape),
  plain(comb),
  plain(bayed),
  plain((chance) => star(chance, chance.whole(3, 24), 3, 12)),
  plain(uncrossed),
  courtyard,
  wildCourtyard,
];

/** Corners added on straight runs. */
const withStraightCorners = (chance: Chance, ring: readonly Vec2[]): Vec2[] =>
  ring.flatMap((a, k) => {
    const b = ring[(k + 1) % ring.length] ?? a;
    const shares = chance.next() < 0.3 ? chance.pick([[0.5], [0.25, 0.5], [chance.between(0.1, 0.9)]]) : [];
    return [a, ...shares.map((t): Vec2 => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])];
  });

/** Any simple footprint: rectangles, wings, bays, combs, stars, tangles, courtyards; turned and moved; extra corners. */
export const randomFootprint = (chance: Chance): Plan => {
  const { outline, holes } = chance.pick(SHAPES)(chance);
  const angle = chance.pick([0, 0, 90, chance.between(0, 360)]);
  const at: Vec2 = chance.pick([
    [0, 0] as const,
    [chance.between(-5000, 5000), chance.between(-5000, 5000)] as const,
  ]);
  const drawn = chance.next() < 0.4 ? withStraightCorners(chance, outline) : outline;
  // As taped, as typed, or as a map has it: what should happen at once happens almost at once.
  const off = chance.pick([0, 0, 0, 1e-9, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 0.01]);
  const place = (ring: readonly Vec2[]): Vec2[] =>
    turned(ring, angle, at).map(([x, y]) => [x + chance.between(-off, off), y + chance.between(-off, off)]);
  return { outline: place(drawn), holes: holes.map(place) };
};
