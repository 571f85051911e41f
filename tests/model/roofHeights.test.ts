import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import type { Solid } from '../../src/model/solid.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Roof } from '../../src/model/structure.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { convexHeight, slabHeights, squareHeight } from '../oracle/roofHeight.ts';
import { meshFaults, volumeOf } from './meshChecks.ts';
import { areaOf, bayed, comb, lShape, tShape, uncrossed } from './randomFootprints.ts';
import { star } from './randomStructures.ts';
import { buildingWith, flat, rectangle, turned } from './sampleStructures.ts';

const rise = (run: number, pitch: number): number => run * Math.tan((pitch * Math.PI) / 180);

const built = (outline: readonly Vec2[], roof: Partial<Roof>, holes: readonly Vec2[][] = [], height = 3) => {
  const { solids, faults } = solidsOf(buildingWith({ outline, holes, height, roof: { ...flat, ...roof } }));
  const [solid] = solids;
  if (!solid) throw new Error(JSON.stringify(faults));
  return { solid, faults };
};

/** The highest place of a solid over a point, by asking every triangle. */
const topOver = ({ positions, triangles }: Solid, [x, y]: Vec2): number => {
  let top = Number.NEGATIVE_INFINITY;
  const p = (t: number, side: number, axis: number): number =>
    positions[3 * (triangles[3 * t + side] ?? 0) + axis] ?? Number.NaN;
  for (let t = 0; t < triangles.length / 3; t++) {
    const side = (a: number, b: number): number =>
      (p(t, b, 0) - p(t, a, 0)) * (y - p(t, a, 1)) - (p(t, b, 1) - p(t, a, 1)) * (x - p(t, a, 0));
    const [u, v, w] = [side(1, 2), side(2, 0), side(0, 1)];
    const whole = u + v + w;
    if (!(whole > 1e-12) || Math.min(u, v, w) < 0) continue;
    top = Math.max(top, (u * p(t, 0, 2) + v * p(t, 1, 2) + w * p(t, 2, 2)) / whole);
  }
  return top;
};

const isInside = (ring: readonly Vec2[], [x, y]: Vec2): boolean => {
  let inside = false;
  ring.forEach(([ax, ay], k) => {
    const [bx, by] = ring[(k + 1) % ring.length] ?? [0, 0];
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
  });
  return inside;
};

const placesIn = (chance: Chance, rings: readonly (readonly Vec2[])[], count: number): Vec2[] => {
  const [outline = []] = rings;
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const found: Vec2[] = [];
  for (let tries = 0; found.length < count && tries < 200; tries++) {
    const place: Vec2 = [
      chance.between(Math.min(...xs), Math.max(...xs)),
      chance.between(Math.min(...ys), Math.max(...ys)),
    ];
    if (rings.filter((ring) => isInside(ring, place)).length === 1) found.push(place);
  }
  return found;
};

/** Compares the roof of pitch 45° over its footprint with a height by brute force. */
const compare = (
  seed: number,
  solid: Solid,
  places: readonly Vec2[],
  height: (p: Vec2) => number,
  within = 1e-5,
): void => {
  for (const place of places) {
    const off = topOver(solid, place) - 3 - height(place);
    expect(Math.abs(off), `seed ${seed} at ${place.join(', ')}`).toBeLessThan(within);
  }
};

const hull = (points: readonly Vec2[]): Vec2[] => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Vec2[]): Vec2[] => {
    const chain: Vec2[] = [];
    for (const p of list) {
      for (;;) {
        const [a, b] = [chain[chain.length - 2], chain[chain.length - 1]];
        if (!a || !b || (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
};

/** Moves each side of an outline along x and y inwards; the sides are parallel to the axes, by hand. */
const inset = (ring: readonly Vec2[], by: number): Vec2[] =>
  ring.map(([x, y], k) => {
    const [px, py] = ring[(k + ring.length - 1) % ring.length] ?? [x, y];
    const [nx, ny] = ring[(k + 1) % ring.length] ?? [x, y];
    const left = (dx: number, dy: number): Vec2 => [-Math.sign(dy) * by, Math.sign(dx) * by];
    const [one, two] = [left(x - px, y - py), left(nx - x, ny - y)];
    return [x + one[0] + two[0], y + one[1] + two[1]];
  });

const seeds = Array.from({ length: trials(150, 10_000) }, (_, k) => k + 1);

describe('a hip of 45° is everywhere as high as brute force over the edges says', () => {
  test('over convex outlines: the distance to the nearest edge line', () => {
    for (const seed of seeds) {
      const chance = chanceFrom(seed);
      const points = Array.from({ length: chance.whole(3, 14) }, (): Vec2 => [
        chance.between(-9, 9),
        chance.between(-9, 9),
      ]);
      const outline = hull(points);
      const { solid, faults } = built(outline, { kind: 'hip', pitch: 45 });
      expect({ seed, faults }).toEqual({ seed, faults: [] });
      compare(seed, solid, placesIn(chance, [outline], 12), (p) => convexHeight(outline, p));
    }
  });
  test('over wings, bays and combs, with a courtyard and with eaves that stand out', () => {
    for (const seed of seeds) {
      const chance = chanceFrom(seed);
      const eaves = chance.pick([lShape, tShape, comb, bayed, () => rectangle(9, 8)])(chance);
      const over = chance.pick([0, 0.05, chance.between(0.05, 0.19)]);
      const court = eaves.length === 4 && chance.next() < 0.7;
      const hole = court ? rectangle(3, chance.pick([2, 3]), [chance.pick([3, 2]), 3]).reverse() : [];
      const rings = court ? [eaves, hole] : [eaves];
      const walls = rings.map((ring) => inset(ring, over));
      const [outline = [], ...holes] = walls;
      const { solid, faults } = built(outline, { kind: 'hip', pitch: 45, overhang: over }, holes);
      expect({ seed, faults }).toEqual({ seed, faults: [] });
      compare(seed, solid, placesIn(chance, rings, 20), (p) => squareHeight(rings, p));
    }
  });
  test('over stars and tangles, courtyards too: the lower envelope of slabs', () => {
    for (const seed of seeds) {
      const chance = chanceFrom(seed);
      const isStar = chance.next() < 0.5;
      const outline = isStar ? star(chance, chance.whole(9, 20), 6, 12) : uncrossed(chance);
      const holes =
        isStar && chance.next() < 0.5 ? [star(chance, chance.whole(3, 8), 0.5, 2.5).reverse()] : [];
      const { solid, faults } = built(outline, { kind: 'hip', pitch: 45 }, holes);
      expect({ seed, faults }).toEqual({ seed, faults: [] });
      const height = slabHeights([outline, ...holes]);
      compare(seed, solid, placesIn(chance, [outline, ...holes], 12), height);
    }
  });
});

describe('pitched roofs on wings', () => {
  const ell = (a: number, w: number): Vec2[] => [
    [0, 0],
    [a, 0],
    [a, w],
    [w, w],
    [w, a],
    [0, a],
  ];
  const house: readonly Vec2[] = [
    [0, 0],
    [4.2, 0],
    [4.2, -1.6],
    [9, -1.6],
    [9, 0],
    [12, 0],
    [12, 7.2],
    [0, 7.2],
  ];
  test('a hip on an L of equal wings has the volume worked out by hand', () => {
    // Moved in by t, the L of wings w and sides a has area (w − 2t)(2a − w − 2t); over 0 ≤ t ≤ w/2 that sums to:
    const above = (a: number, w: number): number => ((a - w) * w ** 2) / 2 + w ** 3 / 6;
    for (let seed = 1; seed <= trials(50, 2000); seed++) {
      const chance = chanceFrom(seed);
      const a = chance.between(5, 20);
      const w = chance.between(1, 0.6 * a);
      const pitch = chance.between(5, 70);
      const { solid } = built(turned(ell(a, w), chance.between(0, 360)), { kind: 'hip', pitch });
      const asked = w * (2 * a - w) * 3 + rise(above(a, w), pitch);
      expect(volumeOf(solid) / asked, `seed ${seed}`).toBeCloseTo(1, 7);
      // A gable instead of a hip end fills w/2 of ridge: w³/8 less w³/12, at either end.
      const gable = built(turned(ell(a, w), chance.between(0, 360)), { kind: 'gable', pitch });
      expect(gable.faults).toEqual([]);
      expect(volumeOf(gable.solid) / (asked + rise(w ** 3 / 12, pitch)), `seed ${seed}`).toBeCloseTo(1, 7);
    }
  });
  test('the house with a bay has its ridge 4.05 m behind the outer edge of the soffit', () => {
    const { solid, faults } = built(house, { kind: 'hip', overhang: 0.45 }, [], 2.7);
    expect(faults).toEqual([]);
    expect(meshFaults(solid)).toEqual([]);
    const top = Math.max(...[...solid.positions].filter((_, k) => k % 3 === 2));
    expect(top).toBeCloseTo(2.7 + rise(4.05, 35), 9);
    expect(top).toBeCloseTo(5.536, 3);
  });
  test('ends of wings are gables, the others hips; a ridge asked for leaves only those that face along it', () => {
    const gables = (outline: readonly Vec2[], ridge: number | null, overhang = 0.3): Vec2[] => {
      const { solid } = built(outline, { kind: 'gable', ridge, overhang });
      // A gable wall goes up to its peak: a corner above the soffit that stands over an edge.
      const peaks: Vec2[] = [];
      for (let k = 0; k < solid.positions.length; k += 3) {
        const [x = 0, y = 0, z = 0] = solid.positions.subarray(k, k + 3);
        const isOnEdge = outline.some(([ax, ay], i) => {
          const [bx, by] = outline[(i + 1) % outline.length] ?? [0, 0];
          return (
            Math.abs(Math.hypot(x - ax, y - ay) + Math.hypot(x - bx, y - by) - Math.hypot(bx - ax, by - ay)) <
            1e-9
          );
        });
        if (z > 3.01 && isOnEdge) peaks.push([Math.round(x * 1e6) / 1e6, Math.round(y * 1e6) / 1e6]);
      }
      return peaks.sort((a, b) => a[0] - b[0]);
    };
    expect(gables(ell(10, 4), null)).toEqual([
      [2, 10],
      [10, 2],
    ]);
    expect(gables(ell(10, 4), 0)).toEqual([[2, 10]]);
    expect(gables(ell(10, 4), 90)).toEqual([[10, 2]]);
    // The bay and both ends of the house.
    expect(gables(house, null, 0.45)).toEqual([
      [0, 3.6],
      [6.6, -1.6],
      [12, 3.6],
    ]);
  });
  test('an outline without a square end stays hipped, and says so', () => {
    const triangle: Vec2[] = [
      [0, 0],
      [8, 0],
      [4, 3],
    ];
    expect(built(triangle, { kind: 'gable' }).faults).toMatchObject([
      { code: 'roof.hip-instead', subject: 'House' },
    ]);
  });
  test('a mono-pitch is one plane over any outline', () => {
    for (const seed of seeds) {
      const chance = chanceFrom(seed);
      const outline = chance.pick([lShape, tShape, comb, bayed, uncrossed])(chance);
      const overhang = chance.pick([0, chance.between(0.02, 0.4)]);
      const ridge = chance.pick([null, chance.between(0, 360)]);
      const pitch = chance.between(3, 40);
      const { solid, faults } = built(outline, { kind: 'monopitch', pitch, overhang, ridge });
      expect({ seed, faults, wrong: meshFaults(solid) }).toEqual({ seed, faults: [], wrong: [] });
      const places = placesIn(chance, [outline], 10);
      const [a, b, c, ...rest] = places.map((p) => [p[0], p[1], topOver(solid, p)] as const);
      if (!a || !b || !c) continue;
      const [u, v] = [b, c].map((q) => [q[0] - a[0], q[1] - a[1], q[2] - a[2]] as const);
      if (!u || !v) continue;
      const [nx, ny, nz] = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      if (Math.abs(nz) < 1) continue;
      expect(Math.hypot(nx, ny) / Math.abs(nz), `seed ${seed}`).toBeCloseTo(rise(1, pitch), 6);
      for (const [x, y, z] of rest) {
        const plane = a[2] - (nx * (x - a[0]) + ny * (y - a[1])) / nz;
        expect(z, `seed ${seed}`).toBeCloseTo(plane, 6);
      }
      // The lowest place is the soffit's edge: what is above the walls has the volume of the plane over the outline.
      expect(volumeOf(solid)).toBeGreaterThan(areaOf(outline) * 3);
    }
  });
});
