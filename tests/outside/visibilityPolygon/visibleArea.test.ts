/*
 * Source: visibility-polygon 1.1.0 (npm, MIT), a general library for what is visible in the plane; run here. Where all walls
 * are taller than the lens, what a camera sees of a level plane is what a point sees in plan. The three rooms also by hand.
 */
import { describe, expect, test } from 'vitest';
import {
  breakIntersections,
  compute,
  convertToSegments,
  type Polygon,
  type Segments,
} from 'visibility-polygon';
import type { Vec2 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { boxSolid } from '../../sight/boxSolid.ts';
import { seenAllRound, TALL } from './allRound.ts';
import { builtWalls, OFFICES, onFloor, wallsOf } from './officePlan.ts';

const areaOf = (ring: readonly (readonly [number, number])[]): number =>
  Math.abs(
    ring.reduce((sum, [x, y], at) => {
      const [nextX, nextY] = ring[(at + 1) % ring.length] ?? [x, y];
      return sum + (x * nextY - nextX * y) / 2;
    }, 0),
  );

const visible = ([x, y]: Vec2, segments: Segments): number => areaOf(compute([x, y], segments));

type Sides = readonly [left: number, bottom: number, right: number, top: number];

const rectangle = ([left, bottom, right, top]: Sides): Polygon => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

/** A tall box on a rectangle of the plan. */
const block = (name: string, [left, bottom, right, top]: Sides): Solid =>
  boxSolid(name, [(left + right) / 2, (bottom + top) / 2, 0], [right - left, top - bottom, TALL]);

const expectSame = (ours: number, theirs: number, told: string): void =>
  expect(Math.abs(ours / theirs - 1), `${told}`).toBeLessThan(1e-6);

describe('rooms worked out by hand', () => {
  interface Room {
    readonly name: string;
    readonly room: Sides;
    readonly eye: Vec2;
    readonly blocks: readonly Sides[];
    readonly area: number;
  }
  const rooms: readonly Room[] = [
    // The shadow of the block is a trapezium 2 to 6 m wide over 6 m, block included: 100 − 24.
    { name: 'a block in the middle', room: [0, 0, 10, 10], eye: [1, 5], blocks: [[4, 4, 6, 6]], area: 76 },
    // 40 + 4: what the arm of the L shows through its mouth.
    { name: 'an L-shaped room', room: [0, 0, 10, 10], eye: [8, 2], blocks: [[4, 4, 10, 10]], area: 44 },
    {
      name: 'walls against the room from outside',
      room: [0, 0, 10, 10],
      eye: [8, 2],
      blocks: [
        [10, 3, 11, 7],
        [2, 10, 5, 11],
      ],
      area: 100,
    },
    {
      name: 'a wall along the room’s edge',
      room: [0, 0, 10, 10],
      eye: [8, 2],
      blocks: [[0, 9, 10, 10]],
      area: 90,
    },
    // 200 − (0.2 + 0.95)/2 × 15.
    {
      name: 'a post of 20 cm',
      room: [0, 0, 20, 10],
      eye: [1, 5],
      blocks: [[5, 4.9, 5.2, 5.1]],
      area: 191.375,
    },
  ];

  test.each(rooms)('$name', ({ room, eye, blocks, area }) => {
    const solids = blocks.map((sides, at) => block(`block-${at}`, sides));
    const ours = seenAllRound(eye, solids, rectangle(room));
    expect(Math.abs(ours - area)).toBeLessThan(1e-6);
    const corners = [rectangle(room), ...blocks.map((sides) => rectangle(sides))];
    expectSame(ours, visible(eye, breakIntersections(convertToSegments(corners))), 'library');
  });
});

describe('open ground between walls taller than the camera', () => {
  test('in random yards of boxes turned anyhow is what the library finds', () => {
    const chance = chanceFrom(91);
    const yard = rectangle([-20, -20, 20, 20]);
    let judged = 0;
    let least = Infinity;
    for (let trial = 0; trial < trials(40, 1000); trial += 1) {
      const boxes = Array.from({ length: chance.whole(1, 15) }, (_, at) => ({
        name: `box-${at}`,
        middle: [chance.between(-15, 15), chance.between(-15, 15)] as const,
        size: [chance.between(0.1, 5), chance.between(0.1, 5)] as const,
        turn: chance.next() < 0.4 ? 0 : chance.between(0, 360),
      }));
      const eye = [chance.between(-19, 19), chance.between(-19, 19)] as const;
      const footprints = boxes.map(({ middle, size, turn }): Polygon => {
        const [s, c] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
        return rectangle([-size[0] / 2, -size[1] / 2, size[0] / 2, size[1] / 2]).map(([a, b]) => [
          middle[0] + c * a - s * b,
          middle[1] + s * a + c * b,
        ]);
      });
      const walls = footprints.flatMap((ring) =>
        ring.map((from, at) => [from, ring[(at + 1) % 4] ?? from] as const),
      );
      const within = footprints.some((_, box) => onFloor(walls.slice(box * 4, box * 4 + 4), eye));
      if (within) continue;
      const solids = boxes.map(({ name, middle, size, turn }) =>
        boxSolid(name, [...middle, 0], [...size, TALL], turn),
      );
      const ours = seenAllRound(eye, solids, yard, chance.between(0, 360));
      const theirs = visible(eye, breakIntersections(convertToSegments([yard, ...footprints])));
      judged += 1;
      least = Math.min(least, theirs);
      expectSame(ours, theirs, `seed 91, trial ${trial}`);
    }
    expect(judged).toBeGreaterThanOrEqual(20);
    expect(least).toBeLessThan(800);
  });

  test.each(OFFICES)('on the floor of $file is what the library finds', (office) => {
    const walls = wallsOf(office);
    expect(walls).toHaveLength(office.walls);
    const [xs, ys] = [walls.map(([[x]]) => x), walls.map(([[, y]]) => y)];
    const box = [Math.min(...xs) - 1, Math.min(...ys) - 1, Math.max(...xs) + 1, Math.max(...ys) + 1] as const;
    const solids = builtWalls(walls);
    const segments: Segments = walls.map(([from, to]) => [
      [from[0], from[1]],
      [to[0], to[1]],
    ]);
    const chance = chanceFrom(92);
    let judged = 0;
    for (let trial = 0; trial < trials(60, 2000); trial += 1) {
      const eye = [chance.between(box[0], box[2]), chance.between(box[1], box[3])] as const;
      if (!onFloor(walls, eye)) continue;
      judged += 1;
      expectSame(
        seenAllRound(eye, solids, rectangle(box), 45),
        visible(eye, segments),
        `seed 92, trial ${trial}`,
      );
    }
    expect(judged).toBeGreaterThan(10);
  });
});
