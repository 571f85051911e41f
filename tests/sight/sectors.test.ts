import { expect, test } from 'vitest';
import { Sectors, turnFrom, turnOf } from '../../src/sight/sectors.ts';
import { BOX, STRIDE } from '../../src/sight/shadowLayout.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';

/*
 * What sectors claim to lie in shadow, held against the polygons themselves by asking points; and polygons that they must
 * claim, since nothing else would leave anything out.
 */
type Place = readonly [number, number];

/** Convex polygons, counter-clockwise, as shadows. */
function shadowsOf(polygons: readonly (readonly Place[])[]) {
  const numbers = new Float64Array(polygons.length * STRIDE);
  polygons.forEach((corners, at) => {
    corners.forEach(([x0, y0], side) => {
      const [x1, y1] = corners[(side + 1) % corners.length] ?? [x0, y0];
      const size = Math.hypot(x1 - x0, y1 - y0);
      const [a, b] = [-(y1 - y0) / size, (x1 - x0) / size];
      numbers.set([a, b, -(a * x0 + b * y0)], at * STRIDE + side * 3);
    });
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    numbers.set([Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)], at * STRIDE + BOX);
  });
  return { numbers, sides: Uint8Array.from(polygons, (corners) => corners.length) };
}

/** On the left of every edge, by the corners themselves. */
const holds = (corners: readonly Place[], [x, y]: Place): boolean =>
  corners.every(([x0, y0], at) => {
    const [x1, y1] = corners[(at + 1) % corners.length] ?? [x0, y0];
    return (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) >= -1e-9;
  });

/** A polygon of three to six corners on an ellipse; on a lattice now and then, whose sides run along directions looked along. */
function polygon(chance: Chance): readonly Place[] {
  const [x, y] = [chance.between(-12, 12), chance.between(-12, 12)];
  if (chance.next() < 0.3) {
    const [i, j, w, h] = [Math.round(x), Math.round(y), chance.whole(1, 8), chance.whole(1, 8)];
    return [
      [i, j],
      [i + w, j],
      [i + w, j + h],
      [i, j + h],
    ];
  }
  const [w, h, many] = [chance.between(0.5, 8), chance.between(0.5, 8), chance.whole(3, 6)];
  const turns = Array.from({ length: many }, (_, at) => ((at + chance.between(0, 0.7)) * 2 * Math.PI) / many);
  return turns.map((turn) => [x + w * Math.cos(turn), y + h * Math.sin(turn)] as const);
}

/** A place at a share of the way from one ray to another and at a distance: directions are asked of their own definition. */
function placeAt(turn: number, radius: number): Place {
  // Sought by halving, since what counts turns is what is tested.
  let [low, high] = [0, 2 * Math.PI];
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (turnOf(Math.cos(middle), Math.sin(middle)) > turn) high = middle;
    else low = middle;
  }
  return [radius * Math.cos(low), radius * Math.sin(low)];
}

test('what is claimed lies in a polygon, wherever it is asked', () => {
  const chance = chanceFrom(37);
  let claimed = 0;
  for (let trial = 0; trial < trials(300, 10_000); trial += 1) {
    const polygons = Array.from({ length: chance.whole(1, 4) }, () => polygon(chance));
    const { numbers, sides } = shadowsOf(polygons);
    const sectors = new Sectors();
    // Some stay out: what is claimed for one of them would be wrong.
    const added = polygons.filter((_, at) => at === 0 || chance.next() < 0.6);
    polygons.forEach((one, at) => {
      if (added.includes(one)) sectors.addOne(numbers, sides, at);
    });
    for (let ask = 0; ask < 40; ask += 1) {
      const start = chance.between(0, 1024);
      const near = chance.between(0, 15);
      const [wide, deep] = [chance.between(0, 12), chance.between(0, 3)];
      if (!sectors.holds(start, start + wide, near, near + deep)) continue;
      claimed += 1;
      for (let point = 0; point < 4; point += 1) {
        const place = placeAt((start + chance.next() * wide) % 1024, near + chance.next() * deep);
        const isCovered = added.some((corners) => holds(corners, place));
        expect(isCovered, `seed 37, trial ${trial}: ${place.join(', ')}`).toBe(true);
      }
    }
  }
  expect(claimed).toBeGreaterThan(400);
});

test('the middle of a large polygon is claimed, in every direction and around the foot', () => {
  const square = (x: number, y: number): readonly Place[] => [
    [x - 3, y - 3],
    [x + 3, y - 3],
    [x + 3, y + 3],
    [x - 3, y + 3],
  ];
  for (let turn = 0; turn < 1024; turn += 16) {
    const [x, y] = placeAt(turn + 0.5, 8);
    const sectors = new Sectors();
    const { numbers, sides } = shadowsOf([square(x, y)]);
    sectors.addOne(numbers, sides, 0);
    expect(sectors.holds(turn - 8, turn + 8, 7, 9), `${turn}`).toBe(true);
  }
  const around = new Sectors();
  const { numbers, sides } = shadowsOf([square(0.5, -1)]);
  around.addOne(numbers, sides, 0);
  expect(around.holds(0, 1024, 1e-6, 1.5)).toBe(true);
  expect(around.holds(0, 1024, 1e-6, 2.5)).toBe(false);
});

test('two halves of a convex polygon claim together what neither claims alone, and no place before one that a ray misses', () => {
  // A house front of two faces, and a ray that only one of them meets.
  const near: readonly Place[] = [
    [-4, 5],
    [4, 5],
    [4, 7],
    [-4, 7],
  ];
  const far: readonly Place[] = [
    [-4, 7],
    [0, 7],
    [0, 10],
    [-4, 10],
  ];
  const { numbers, sides } = shadowsOf([near, far]);
  const both = new Sectors();
  both.add(numbers, sides, 0, 2, turnOf(4, 5) - 1, turnOf(-4, 5) + 1);
  const [middle, right] = [turnOf(-1, 7), turnOf(2.5, 6)];
  expect(both.holds(middle - 2, middle + 2, 6, 9)).toBe(true);
  expect(both.holds(right - 2, right + 2, 6, 6.5)).toBe(true);
  expect(both.holds(right - 2, right + 2, 1, 6.5)).toBe(false);
  expect(both.holds(right - 2, right + 2, 6, 9)).toBe(false);
});

test('a stretch of a line is held where all of it lies in shadow, and a line through the foot never', () => {
  const { numbers, sides } = shadowsOf([
    [
      [-5, 4],
      [5, 4],
      [5, 9],
      [-5, 9],
    ],
  ]);
  const sectors = new Sectors();
  sectors.addOne(numbers, sides, 0);
  // y = 6: a = 0, b = 1, k = −6, and t runs along (b, −a) = (1, 0).
  expect(sectors.holdsStretch(0, 1, -6, -2, 2)).toBe(true);
  expect(sectors.holdsStretch(0, 1, -6, 0.5, 3)).toBe(true);
  expect(sectors.holdsStretch(0, 1, -6, -2, 6)).toBe(false);
  expect(sectors.holdsStretch(0, 1, -6, -6, 2)).toBe(false);
  expect(sectors.holdsStretch(0, 1, -3, -1, 1)).toBe(false);
  // x = 1, from y = 5 to 8 and beyond: t runs along (0, −1).
  expect(sectors.holdsStretch(1, 0, -1, -8, -5)).toBe(true);
  expect(sectors.holdsStretch(1, 0, -1, -10, -5)).toBe(false);
  expect(sectors.holdsStretch(1, 0, -1, -8, -3)).toBe(false);
  // Around the foot: what is in shadow on one side is not on the other.
  const around = new Sectors();
  const square = shadowsOf([
    [
      [-1, -9],
      [9, -9],
      [9, 9],
      [-1, 9],
    ],
  ]);
  around.addOne(square.numbers, square.sides, 0);
  expect(around.holdsStretch(0, 1, 0, -0.5, 0.5)).toBe(false);
  expect(around.holdsStretch(0, 1, 0, 0.5, 4)).toBe(true);
  // Both of its ends lie in shadow and so does what is as far away between them; its middle, which is nearer, does not.
  const rectangle = (left: number, bottom: number, right: number, top: number): readonly Place[] => [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
  const gate = shadowsOf([rectangle(-9, 4, -1.5, 9), rectangle(1.5, 4, 9, 9), rectangle(-5, 6.5, 5, 12)]);
  const three = new Sectors();
  for (let at = 0; at < 3; at += 1) three.addOne(gate.numbers, gate.sides, at);
  expect(three.holdsStretch(0, 1, -6, -4, 4)).toBe(false);
  expect(three.holdsStretch(0, 1, -7, -4, 4)).toBe(true);
});

test('between two rays a straight end of a shadow is nearer than on them: no more is claimed', () => {
  for (const turn of [100.5, 300.5, 512.5, 900.5]) {
    const [x, y] = placeAt(turn, 1);
    const at = (along: number, across: number): Place => [x * along - y * across, y * along + x * across];
    const { numbers, sides } = shadowsOf([[at(4, -3), at(10, -3), at(10, 3), at(4, 3)]]);
    const sectors = new Sectors();
    sectors.addOne(numbers, sides, 0);
    // On the rays beside it ends 12 to 20 µm farther.
    expect(sectors.holds(turn - 0.1, turn + 0.1, 6, 10 + 5e-6)).toBe(false);
    expect(sectors.holds(turn - 0.1, turn + 0.1, 6, 10 - 2e-4)).toBe(true);
  }
});

test('a ray along a side and a centimetre off it meets nothing, so that nothing beside it is claimed', () => {
  for (const [x, y] of [
    [2, 0.01],
    [2, -4.01],
    [-6, 0.01],
    [-6, -4.01],
  ] as const) {
    const sectors = new Sectors();
    const { numbers, sides } = shadowsOf([
      [
        [x, y],
        [x + 4, y],
        [x + 4, y + 4],
        [x, y + 4],
      ],
    ]);
    sectors.add(numbers, sides, 0, 1, 0, 1024);
    const axis = turnOf(x, 0);
    const away = x * y > 0 ? axis + 8 : axis - 8;
    expect(sectors.holds(axis, axis, 3, 4)).toBe(false);
    expect(sectors.holds(away, away, 3, 4)).toBe(true);
    expect(sectors.holds(Math.min(axis, away), Math.max(axis, away), 3, 4)).toBe(false);
    // On either side of the ray alone.
    expect(sectors.holds(axis + 0.1, axis + 0.9, 3, 4) || sectors.holds(axis - 0.9, axis - 0.1, 3, 4)).toBe(
      false,
    );
  }
});

test('directions are counted counter-clockwise from p, and told apart the shorter way round', () => {
  expect([turnOf(1, 0), turnOf(1, 1), turnOf(0, 1), turnOf(-1, 0), turnOf(0, -1)]).toEqual([
    0, 128, 256, 512, 768,
  ]);
  expect(turnFrom(10, 1, 0)).toBe(-10);
  expect(turnFrom(1000, 1, 0)).toBe(24);
  expect(turnFrom(20, 0, -1)).toBe(-276);
});
