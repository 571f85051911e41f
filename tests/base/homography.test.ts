import { describe, expect, test } from 'vitest';
import {
  inverse,
  pictureFromWall,
  quadTrouble,
  through,
  wallFromPicture,
  type Quad,
} from '../../src/base/homography.ts';
import type { Vec2 } from '../../src/base/vector.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';

/** A wall seen by a pinhole of 1000 px, in px with v down: by similar triangles, no matrix of nine numbers. */
const photograph = (chance: Chance) => {
  const width = chance.between(1, 20);
  const height = chance.between(1, 12);
  const aside = (chance.between(-60, 60) * Math.PI) / 180;
  const back = (chance.between(-25, 25) * Math.PI) / 180;
  const away = chance.between(1.2, 4) * Math.max(width, height);
  const see = ([x, y]: Vec2): Vec2 => {
    const [across, up] = [x - width / 2, y - height / 2];
    const [side, deep] = [across * Math.cos(aside), across * Math.sin(aside)];
    const [rise, far] = [up * Math.cos(back), deep + away + up * Math.sin(back)];
    return [2000 + (1000 * side) / far, 1500 - (1000 * rise) / far];
  };
  const corners: Quad = [see([0, 0]), see([width, 0]), see([width, height]), see([0, height])];
  return { width, height, see, corners };
};

const seeds = Array.from({ length: trials(300, 10_000) }, (_, k) => k + 1);

describe('a wall in a photograph', () => {
  test('is squared: every place comes back where it is, from four corners', () => {
    for (const seed of seeds) {
      const chance = chanceFrom(seed);
      const { width, height, see, corners } = photograph(chance);
      expect({ seed, trouble: quadTrouble(corners) }).toEqual({ seed, trouble: null });
      const toWall = wallFromPicture(corners, width, height);
      const toPicture = pictureFromWall(corners, width, height);
      for (let k = 0; k < 5; k++) {
        const place: Vec2 = [chance.between(-0.2, 1.2) * width, chance.between(-0.2, 1.2) * height];
        const [u, v] = see(place);
        const back = through(toWall, [u, v]);
        const there = through(toPicture, place);
        expect(Math.abs((back?.[0] ?? Infinity) - place[0]), `seed ${seed}`).toBeLessThan(1e-7);
        expect(Math.abs((back?.[1] ?? Infinity) - place[1]), `seed ${seed}`).toBeLessThan(1e-7);
        expect(Math.hypot((there?.[0] ?? Infinity) - u, (there?.[1] ?? Infinity) - v)).toBeLessThan(1e-6);
      }
    }
  });
  test('keeps its four corners, to the last digits', () => {
    const corners: Quad = [
      [120, 900],
      [1410, 1040],
      [1380, 210],
      [160, 330],
    ];
    const toPicture = pictureFromWall(corners, 6, 3);
    const rectangle: readonly Vec2[] = [
      [0, 0],
      [6, 0],
      [6, 3],
      [0, 3],
    ];
    rectangle.forEach((place, k) => {
      const [u = Number.NaN, v = Number.NaN] = through(toPicture, place) ?? [];
      expect(Math.hypot(u - (corners[k]?.[0] ?? 0), v - (corners[k]?.[1] ?? 0))).toBeLessThan(1e-9);
    });
  });
  test('has no place on its horizon or beyond', () => {
    // Sides that meet at u = 2000: there the wall ends, infinitely far away.
    const corners: Quad = [
      [0, 1000],
      [1000, 750],
      [1000, 250],
      [0, 0],
    ];
    const toWall = wallFromPicture(corners, 4, 3);
    expect(through(toWall, [1990, 500])?.[0]).toBeGreaterThan(100);
    expect(through(toWall, [2000, 500])).toBeNull();
    expect(through(toWall, [2010, 500])).toBeNull();
  });
  test('goes and comes back by the inverse of the inverse', () => {
    for (const seed of seeds.slice(0, 50)) {
      const { width, height, corners } = photograph(chanceFrom(seed));
      const once = pictureFromWall(corners, width, height);
      const again = inverse(inverse(once));
      again.forEach((value, k) => expect(value / (again[8] * (once[k] ?? 0))).toBeCloseTo(1, 8));
    }
  });
});

describe('quadTrouble', () => {
  const square: Quad = [
    [0, 100],
    [100, 100],
    [100, 0],
    [0, 0],
  ];
  const [a, b, c, d] = square;
  test('lets a plain quad be, upright or leaning', () => {
    expect(quadTrouble(square)).toBeNull();
    expect(
      quadTrouble([
        [10, 130],
        [90, 100],
        [100, 0],
        [0, 20],
      ]),
    ).toBeNull();
  });
  test('names crossed sides, the wrong way round, a dent, corners in one line or in one place, and what is no number', () => {
    expect(quadTrouble([a, b, d, c])).toMatchObject({ kind: 'crossed' });
    expect(quadTrouble([a, c, b, d])).toMatchObject({ kind: 'crossed' });
    expect(quadTrouble([d, c, b, a])).toEqual({ kind: 'turned', corner: 0 });
    expect(quadTrouble([a, b, [30, 70], d])).toEqual({ kind: 'dent', corner: 2 });
    expect(quadTrouble([d, [30, 70], b, a])).toMatchObject({ kind: 'turned' });
    expect(quadTrouble([a, b, c, [50, 50]])).toEqual({ kind: 'near', corner: 3 });
    expect(quadTrouble([a, a, c, d])).toMatchObject({ kind: 'near' });
    expect(quadTrouble([a, b, a, d])).toMatchObject({ kind: 'near' });
    expect(quadTrouble([a, [Number.NaN, 0], c, d])).toEqual({ kind: 'number', corner: 1 });
  });
  test('says of every four points what they are: convex, dented or crossed, one way round or the other', () => {
    const isLeft = (p: Vec2, q: Vec2, r: Vec2): boolean =>
      (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]) < 0;
    const meets = (p: Vec2, q: Vec2, r: Vec2, s: Vec2): boolean =>
      isLeft(p, q, r) !== isLeft(p, q, s) && isLeft(r, s, p) !== isLeft(r, s, q);
    const count = { null: 0, dent: 0, crossed: 0, turned: 0, near: 0, number: 0 };
    for (const seed of seeds) {
      const chance = chanceFrom(seed);
      const point = (): Vec2 => [chance.between(0, 4000), chance.between(0, 3000)];
      const [p, q, r, s] = [point(), point(), point(), point()];
      const kind = quadTrouble([p, q, r, s])?.kind ?? 'null';
      count[kind]++;
      const crossed = meets(p, q, r, s) || meets(q, r, s, p);
      expect({ seed, crossed: kind === 'crossed' || kind === 'near' }).toEqual({
        seed,
        crossed: crossed || kind === 'near',
      });
      // Of quads that can be used, the two diagonals meet.
      const diagonals = meets(p, r, q, s);
      expect({ seed, ok: kind !== 'null' || (diagonals && isLeft(p, q, r)) }).toEqual({ seed, ok: true });
    }
    expect(Math.min(count.null, count.dent, count.crossed, count.turned)).toBeGreaterThan(seeds.length / 30);
  });
});
