import { describe, expect, test } from 'vitest';
import type { Vec2, Vec3 } from '../../../../src/base/vector.ts';
import { EAST_NORTH } from '../../../../src/editor/tools/drawing/axes.ts';
import type { Pointed } from '../../../../src/editor/tools/pointed.ts';
import { snapAt, type Snapped } from '../../../../src/editor/tools/snapping/snapAt.ts';
import type { Plan } from '../../../../src/plan/plan.ts';
import { nothing, rectangle, withBlocks } from '../drawn.ts';
import { fromAbove } from '../planView.ts';
import { pointing } from '../pointing.ts';

/** 2 cm to the pixel: 12 px are 0.24 m. */
const PIXEL = 0.02;
const garage = withBlocks({ Garage: rectangle(10, 0, 14, 6) });

interface More extends Partial<Pointed> {
  readonly corners?: readonly Vec2[];
  readonly held?: string | null;
  readonly snapping?: boolean;
  readonly closes?: boolean;
}

function snapped(plan: Plan, point: Vec2, more: More = {}): Snapped {
  const { corners = [], held = null, snapping = true, closes = false, ...pointed } = more;
  const chain = { corners, axes: EAST_NORTH };
  const result = snapAt({ plan, at: fromAbove(point, pointed, PIXEL), snapping, chain, closes, held });
  if (!result) throw new Error('the ground was missed');
  return result;
}

const px = (pixels: number): number => pixels * PIXEL;

describe('reach and order', () => {
  test('a corner attracts to 12 px with the mouse and 22 with a finger, and is named', () => {
    const at = (pixels: number, by: Pointed['by']) => snapped(garage, [10 - px(pixels), -0.001], { by });
    expect(at(11.9, 'mouse')).toMatchObject({ point: [10, 0], order: 1, name: 'corner of Garage' });
    expect(at(12.1, 'mouse').order).not.toBe(1);
    expect(at(12.1, 'pen').order).not.toBe(1);
    expect(at(21.9, 'touch')).toMatchObject({ point: [10, 0], order: 1 });
    expect(at(22.1, 'touch').order).not.toBe(1);
    expect(at(5, 'mouse').marks).toEqual([{ at: [10, 0, 0], sign: 'corner' }]);
  });

  test('the middle of a side goes before the side, and attracts to 10 px', () => {
    expect(snapped(garage, [12 + px(8), -px(5)])).toMatchObject({
      point: [12, 0],
      order: 3,
      name: 'middle of a side of Garage',
    });
    expect(snapped(garage, [12 + px(9.9), 0]).order).toBe(3);
    expect(snapped(garage, [12 + px(10.1), 0]).order).toBe(5);
    const past = snapped(garage, [12 + px(11), -px(5)]);
    expect(past).toMatchObject({ order: 5, name: 'on a side of Garage' });
    expect(past.point[1]).toBe(0);
    expect(past.edge).toMatchObject({ heading: 90, of: 'Garage' });
    expect(snapped(garage, [12.7, -px(7.9)]).order).toBe(5);
    expect(snapped(garage, [12.7, -px(8.1)]).order).not.toBe(5);
  });

  test('on a side the place goes to the grid along it', () => {
    // 8 px are 0.16 m: the step is 0.5.
    expect(snapped(garage, [12.6, -px(2)]).point).toEqual([12.5, 0]);
  });

  test('the foot of the perpendicular from the last corner goes before the side', () => {
    const from: Vec2 = [5, 4.3];
    expect(snapped(garage, [10 + px(3), 4.3 + px(5)], { corners: [from] })).toMatchObject({
      order: 4,
      name: 'square to a side of Garage',
      point: [10, 4.3],
    });
  });

  test('of two corners the nearest counts', () => {
    const both = withBlocks({ One: rectangle(0, 0, 1, 1), Two: rectangle(1.2, 0, 2, 1) });
    expect(snapped(both, [1.08, 0.01]).name).toBe('corner of One');
    expect(snapped(both, [1.13, 0.01]).name).toBe('corner of Two');
  });

  test('away from everything it is the grid, with a small cross', () => {
    const free = snapped(nothing, [3.31, 7.18]);
    expect(free).toMatchObject({ point: [3.5, 7], order: 9, name: null });
    expect(free.marks).toEqual([{ at: [3.5, 7, 0], sign: 'grid' }]);
  });

  test('a plan in feet has a grid of feet and inches', () => {
    const plan: Plan = { ...nothing, settings: { ...nothing.settings, units: 'feet' } };
    const { point } = snapped(plan, [3.31, 7.18]);
    // 8 px are 0.16 m: the step is a foot.
    expect(point[0]).toBeCloseTo(11 * 0.3048, 6);
    expect(point[1]).toBeCloseTo(24 * 0.3048, 6);
  });

  test('held Ctrl and the switch leave all of it off, to a millimetre', () => {
    const near: Vec2 = [10.01234, 0.00567];
    for (const off of [{ free: true }, { snapping: false }])
      expect(snapped(garage, near, off)).toMatchObject({ point: [10.012, 0.006], order: null, name: null });
  });

  test('what is hidden does not attract', () => {
    const [block] = Object.values(garage.structures);
    if (!block) throw new Error('no block');
    const plan = { ...garage, structures: { [block.id]: { ...block, hidden: true } } };
    expect(snapped(plan, [10.01, 0.01]).order).toBe(9);
  });
});

describe('holding', () => {
  test('a corner holds to one and a half times its reach', () => {
    const { key } = snapped(garage, [10 - px(5), 0]);
    const held = (pixels: number) => snapped(garage, [10 - px(pixels), 0], { held: key });
    expect(held(17.9).order).toBe(1);
    expect(held(18.1).order).not.toBe(1);
  });

  test('a side holds against the grid, and only a lower order 3 px inside its own reach breaks it', () => {
    const { key } = snapped(garage, [13.3, -px(7)]);
    expect(key).not.toBeNull();
    expect(snapped(garage, [13.3, -px(11)], { held: key }).key).toBe(key);
    // The corner at 14, 0 reaches 12 px; it takes over at 9.
    expect(snapped(garage, [14 - px(10), 0], { held: key }).order).toBe(5);
    expect(snapped(garage, [14 - px(8.9), 0], { held: key }).order).toBe(1);
    expect(snapped(garage, [14 - px(10), 0]).order).toBe(1);
  });
});

describe('guides of a chain', () => {
  const corners: readonly Vec2[] = [
    [0, 0],
    [5, 1],
  ];
  // Square to the first side, to the left of it: 2 m on.
  const square: Vec2 = [5 - 2 / Math.sqrt(26), 1 + 10 / Math.sqrt(26)];

  test('square to the last side, with its guide and its name', () => {
    const meant = snapped(nothing, [square[0] + px(4), square[1]], { corners });
    expect(meant).toMatchObject({ order: 6, name: 'square to side 1' });
    const [x, y] = [meant.point[0] - 5, meant.point[1] - 1];
    expect(Math.abs(x * 5 + y * 1)).toBeLessThan(1e-6);
    expect(meant.lines[0]).toMatchObject({ style: 'guide' });
    // The length goes to the grid.
    expect(Math.hypot(x, y)).toBeCloseTo(2, 6);
  });

  test('6 px aside it is no longer square', () => {
    expect(snapped(nothing, [square[0] + px(6.5), square[1]], { corners }).name).not.toBe('square to side 1');
  });

  test('due north and east from the last corner', () => {
    expect(snapped(nothing, [5 + px(3), 4.2], { corners })).toMatchObject({
      name: 'due north',
      point: [5, 4],
    });
    expect(snapped(nothing, [8.1, 1 - px(3)], { corners })).toMatchObject({
      name: 'due east',
      point: [8, 1],
    });
  });

  test('in line with an earlier corner and square to the last side cross, and the crossing goes first', () => {
    const box: readonly Vec2[] = [
      [0, 0],
      [7, 0],
      [7, 4.33],
    ];
    const meant = snapped(nothing, [px(8), 4.33 - px(7)], { corners: box });
    expect(meant).toMatchObject({ order: 2, point: [0, 4.33] });
    expect(meant.name).toContain('in line with corner 1');
    expect(meant.name).toContain('square to side 2');
    expect(meant.marks[0]).toMatchObject({ sign: 'crossing' });
  });

  test('on from a side that is drawn in the plan', () => {
    const meant = snapped(garage, [8.3, px(4)]);
    expect(meant).toMatchObject({ order: 6, name: 'in line with Garage' });
    expect(meant.point[1]).toBeCloseTo(0, 9);
  });

  test('parallel to a side that is drawn in the plan', () => {
    const askew = withBlocks({
      Shed: [
        [0, 0],
        [4, 1],
        [3, 5],
        [-1, 4],
      ],
    });
    // 3 px beside the parallel through the last corner, away from the shed's own lines.
    const meant = snapped(askew, [-3 + 1.7 + px(1), 7 + 0.425 + px(3)], { corners: [[-3, 7]] });
    expect(meant.name).toContain('parallel to Shed');
    const [x, y] = meant.point;
    expect((y - 7) / (x + 3)).toBeCloseTo(0.25, 6);
  });

  test('as long as an earlier side, along a guide', () => {
    const sides: readonly Vec2[] = [
      [0, 0],
      [3.27, 0],
      [3.27, 2],
      [9, 2],
    ];
    const meant = snapped(nothing, [9 + px(2), 2 + 3.27 - px(4)], { corners: sides });
    expect(meant.point[0]).toBeCloseTo(9, 9);
    expect(meant.point[1]).toBeCloseTo(5.27, 9);
    expect(meant.name).toContain('as long as side 1');
    expect(meant.marks.map(({ sign }) => sign)).toContain('equal');
  });

  test('within 2.5° of a multiple of fifteen, in steps of length', () => {
    const from: readonly Vec2[] = [[0, 0]];
    const at = (degrees: number): Vec2 => [
      4.1 * Math.sin((degrees * Math.PI) / 180),
      4.1 * Math.cos((degrees * Math.PI) / 180),
    ];
    const meant = snapped(nothing, at(32.4), { corners: from });
    expect(meant.order).toBe(8);
    expect(meant.point[0]).toBeCloseTo(2, 9);
    expect(meant.point[1]).toBeCloseTo(2 * Math.sqrt(3), 9);
    expect(snapped(nothing, at(32.6), { corners: from }).order).toBe(9);
  });

  test('Shift keeps to the axes and to what is square to the last side', () => {
    const chain: readonly Vec2[] = [
      [0, 0],
      [4, 0],
    ];
    expect(snapped(nothing, [4.9, 3.1], { corners: chain, shift: true }).point).toEqual([4, 3]);
    expect(snapped(nothing, [7.1, 1.4], { corners: chain, shift: true }).point).toEqual([7, 0]);
    const meant = snapped(nothing, [square[0] - 0.3, square[1] + 0.2], { corners, shift: true });
    expect(Math.abs((meant.point[0] - 5) * 5 + (meant.point[1] - 1))).toBeLessThan(1e-6);
  });

  test('Shift stops at the line of a side that is crossed', () => {
    const meant = snapped(garage, [9.9, 3.4], { corners: [[2, 3.3]], shift: true });
    expect(meant.point).toEqual([10, 3.3]);
  });

  test('the first corner of a chain attracts to 16 px, to close it', () => {
    const ring: readonly Vec2[] = [
      [0, 0],
      [5, 0],
      [5, 3],
    ];
    expect(snapped(nothing, [px(15), px(4)], { corners: ring, closes: true })).toMatchObject({
      key: 'close',
      point: [0, 0],
    });
    expect(snapped(nothing, [px(16), px(4)], { corners: ring, closes: true }).key).not.toBe('close');
  });
});

describe('turned views', () => {
  const eye: Vec3 = [12, -30, 22];
  const ask = (target: Vec3, seen = true): Snapped | null => {
    const at = pointing(garage, target, {}, eye);
    const screen = { ...at.screen, seen: () => seen };
    const chain = { corners: [], axes: EAST_NORTH };
    return snapAt({ plan: garage, at: { ...at, screen }, snapping: true, chain, closes: false, held: null });
  };

  test('a corner at the top of a wall attracts too, and answers on the ground', () => {
    expect(ask([10.01, 0, 2.41])).toMatchObject({ order: 1, point: [10, 0], name: 'corner of Garage' });
    expect(ask([10.01, 0, 0.01])).toMatchObject({ order: 1, point: [10, 0] });
    expect(ask([10.01, 0, 1.2])?.order).not.toBe(1);
  });

  test('what is not seen does not attract', () => {
    expect(ask([10.01, 0, 2.41], false)?.name).not.toBe('corner of Garage');
  });

  test('ground seen under less than 7° gives no place', () => {
    const low = pointing(nothing, [0, 0, 0], {}, [0, -100, 11]);
    const high = pointing(nothing, [0, 0, 0], {}, [0, -100, 14]);
    const chain = { corners: [], axes: EAST_NORTH };
    const about = { plan: nothing, snapping: true, chain, closes: false, held: null };
    expect(snapAt({ ...about, at: low })).toBeNull();
    expect(snapAt({ ...about, at: high })).not.toBeNull();
  });
});
