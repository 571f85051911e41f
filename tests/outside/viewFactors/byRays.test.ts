/* Source of the figures: see shapes.ts. */
import { expect, test } from 'vitest';
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';
import { chanceFrom, trials, type Chance } from '../../house/seeded.ts';
import { boxSolid } from '../../sight/boxSolid.ts';
import { clearOver } from '../lineOfSight/clear.ts';
import {
  cosineWeighted,
  levelDisc,
  levelRectangle,
  parallel,
  solidShare,
  uniform,
  upright,
  uprightRectangle,
} from './shapes.ts';

const RAYS = trials(60_000, 2_000_000);
const SEED = 1842;

/** Share of seeded rays that meet something. */
function share(solids: readonly Solid[], way: typeof uniform, from: (chance: Chance) => Vec3): number {
  const chance = chanceFrom(SEED);
  const isClear = clearOver(solids);
  let met = 0;
  for (let ray = 0; ray < RAYS; ray += 1) {
    const [x, y, z] = from(chance);
    const [dx, dy, dz] = way(chance.next(), chance.next());
    if (!isClear([x, y, z], [x + 1000 * dx, y + 1000 * dy, z + 1000 * dz])) met += 1;
  }
  return met / RAYS;
}

const origin = (): Vec3 => [0, 0, 0];

/** Anywhere on the level rectangle (0, 0) to (width, depth). */
const onFloor =
  ([width, depth]: Vec2) =>
  (chance: Chance): Vec3 => [chance.between(0, width), chance.between(0, depth), 0];

const quarter = (a: number, b: number, c: number) => levelRectangle([0, 0], [a, b], c);

test.each([
  ['a rectangle from a point: all directions', [quarter(1, 2, 0.5)], uniform, origin, 0.083604],
  ['a parallel rectangle 3 × 2 at 0.5', [quarter(3, 2, 0.5)], cosineWeighted, origin, 0.240894],
  ['a parallel rectangle 1 × 1 at 1', [quarter(1, 1, 1)], cosineWeighted, origin, 0.138532],
  [
    'a rectangle 2 × 2 straight above',
    [levelRectangle([-1, -1], [1, 1], 1)],
    cosineWeighted,
    origin,
    0.554126,
  ],
  [
    'a wall 1 high, 2 long, 0.5 away',
    [uprightRectangle([0, 0], [2, 1], 0.5)],
    cosineWeighted,
    origin,
    0.135488,
  ],
  ['a disc off its axis', [levelDisc(0.5, 1, 1)], cosineWeighted, origin, 0.437983],
  ['a disc on its axis', [levelDisc(0, 1, 2)], cosineWeighted, origin, 1 / 5],
  [
    'two rectangles 1 × 1.5 at 0.5',
    [levelRectangle([0, 0], [1, 1.5], 0.5)],
    cosineWeighted,
    onFloor([1, 1.5]),
    0.475576,
  ],
  [
    'opposite faces of a cube',
    [levelRectangle([0, 0], [1, 1], 1)],
    cosineWeighted,
    onFloor([1, 1]),
    0.199825,
  ],
  [
    'neighbouring faces of a cube',
    [uprightRectangle([0, 0], [1, 1], 1)],
    cosineWeighted,
    onFloor([1, 1]),
    0.200044,
  ],
] as const)('%s: the share of rays that meet it is the closed form', (_, solids, way, from, figure) => {
  // Four standard errors of as many independent rays.
  const slack = 4 * Math.sqrt((figure * (1 - figure)) / RAYS);
  expect(Math.abs(share(solids, way, from) - figure), `seed ${SEED}, ${RAYS} rays`).toBeLessThan(slack);
});

test('the closed forms meet the printed examples', () => {
  expect(solidShare(1, 2, 0.5)).toBeCloseTo(0.083604, 6);
  expect(parallel(3, 2, 0.5)).toBeCloseTo(0.240894, 6);
  expect(4 * parallel(1, 1, 1)).toBeCloseTo(0.554126, 6);
  expect(upright(1, 2, 0.5)).toBeCloseTo(0.135488, 6);
});

test('no ray leaves a cube of six plates, and all leave where there is none', () => {
  const plates = [-1, 1].flatMap((side) => [
    boxSolid('plate', [0, 0, side > 0 ? 1 : -1.1], [2.2, 2.2, 0.1]),
    boxSolid('plate', [side * 1.05, 0, -1], [0.1, 2.2, 2]),
    boxSolid('plate', [0, side * 1.05, -1], [2.2, 0.1, 2]),
  ]);
  expect(share(plates, uniform, origin)).toBe(1);
  expect(share([], uniform, origin)).toBe(0);
});

test.each([0.25, 0.5, 1, 2, 3])(
  'over the floor of an endless street %d as high as wide the sky has its share',
  (ratio) => {
    // Source: cos(atan(2H/W)), a public repository's note on Oke's canyon (read).
    const sky = Math.cos(Math.atan(2 * ratio));
    const walls = [-1, 1].map((side) =>
      boxSolid('wall', [0, side * (0.5 + 0.1), -1], [2000, 0.2, ratio + 1]),
    );
    const slack = 4 * Math.sqrt((sky * (1 - sky)) / RAYS);
    expect(Math.abs(1 - share(walls, cosineWeighted, origin) - sky), `seed ${SEED}`).toBeLessThan(slack);
  },
);
