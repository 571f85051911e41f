import { describe, expect, test } from 'vitest';
import type { Grip } from '../../src/editor/grips/grip.ts';
import { gripAt, gripPlaces, resizeCursor, type GripAt } from '../../src/view3d/drawing/gripPlaces.ts';

const corner = (index: number): Grip => ({ part: 'corner', structure: 'h', index });
const edge: Grip = { part: 'edge', structure: 'h', index: 0 };
const height: Grip = { part: 'height', structure: 'h' };
const turn: Grip = { part: 'turn' };

const at = (grip: Grip, x: number, y: number, more: Partial<GripAt> = {}): GripAt => ({
  grip,
  spot: { x, y },
  behind: false,
  bar: null,
  ...more,
});

const wide = [at(corner(0), 0, 0), at(corner(1), 200, 0), at(corner(2), 200, 200)];

describe('handles on the window', () => {
  test('an edge of less than 40 px has no bar', () => {
    const bar = (length: number) =>
      at(edge, 100, 0, {
        bar: [
          { x: 0, y: 0 },
          { x: length, y: 0 },
        ],
      });
    expect(gripPlaces([...wide, bar(39.9)]).map(({ grip }) => grip)).not.toContain(edge);
    expect(gripPlaces([...wide, bar(40)]).map(({ grip }) => grip)).toContain(edge);
  });

  test('where two overlap, height comes before corner, corner before edge, edge before turn; the later is small', () => {
    const order = [height, corner(0), edge, turn];
    for (const [i, first] of order.entries())
      for (const second of order.slice(i + 1)) {
        const far = [at(corner(8), 300, 300), at(corner(9), 500, 0)];
        const placed = gripPlaces([...far, at(second, 8, 0), at(first, 0, 0)]);
        const small = (grip: Grip) => placed.find((one) => one.grip === grip)?.small;
        expect([small(first), small(second)]).toEqual([false, true]);
      }
  });

  test('apart, none is small', () => {
    expect(gripPlaces([...wide, at(height, 13, 0)]).every(({ small }) => !small)).toBe(true);
  });

  test('a thing below 64 px has its handles on leaders, 20 px beyond it and a target apart', () => {
    const tiny = [
      at(corner(0), 100, 100),
      at(corner(1), 110, 100),
      at(corner(2), 110, 110),
      at(corner(3), 100, 110),
    ];
    const placed = gripPlaces(tiny);
    expect(placed.every(({ leader }) => leader)).toBe(true);
    for (const { at: spot } of placed)
      expect(Math.hypot(spot.x - 105, spot.y - 105)).toBeCloseTo(Math.hypot(5, 5) + 20, 6);
    placed.forEach((one, i) =>
      placed.slice(i + 1).forEach((other) => {
        expect(Math.hypot(one.at.x - other.at.x, one.at.y - other.at.y)).toBeGreaterThan(23.9);
      }),
    );
    expect(gripPlaces(wide).some(({ leader }) => leader)).toBe(false);
  });

  test('handles that fall on one spot are told apart on their leaders', () => {
    const placed = gripPlaces([at(corner(0), 50, 50), at(corner(1), 50, 50), at(height, 50, 50)]);
    const spots = new Set(placed.map(({ at: { x, y } }) => `${x.toFixed(1)} ${y.toFixed(1)}`));
    expect(spots.size).toBe(3);
  });
});

describe('the handle under the pointer', () => {
  test('is the nearest within reach, and none beyond it', () => {
    const placed = gripPlaces(wide);
    expect(gripAt(placed, { x: 9, y: 0 }, 12)?.grip).toEqual(corner(0));
    expect(gripAt(placed, { x: 13, y: 0 }, 12)).toBeNull();
    expect(gripAt(placed, { x: 13, y: 0 }, 22)?.grip).toEqual(corner(0));
  });

  test('of two as near, the one that comes first', () => {
    const placed = gripPlaces([...wide, at(turn, 100, 90), at(edge, 100, 110)]);
    expect(gripAt(placed, { x: 100, y: 100 }, 12)?.grip).toEqual(edge);
  });

  test('a visible one within 24 px wins over one behind a solid', () => {
    const hidden = at(corner(0), 0, 0, { behind: true });
    const far = at(corner(5), 300, 300);
    const near = gripPlaces([hidden, at(corner(1), 20, 0), far]);
    expect(gripAt(near, { x: 1, y: 0 }, 22)?.grip).toEqual(corner(1));
    const apart = gripPlaces([hidden, at(corner(1), 200, 0), far]);
    expect(gripAt(apart, { x: 1, y: 0 }, 12)?.grip).toEqual(corner(0));
  });
});

test('the resize cursor is the one nearest to the way on the window', () => {
  expect([resizeCursor(1, 0), resizeCursor(-1, 0.1)]).toEqual(['ew-resize', 'ew-resize']);
  expect([resizeCursor(0, 1), resizeCursor(0.2, -1)]).toEqual(['ns-resize', 'ns-resize']);
  // y runs down: right and down is towards south-east.
  expect([resizeCursor(1, 1), resizeCursor(-1, -1)]).toEqual(['nwse-resize', 'nwse-resize']);
  expect([resizeCursor(1, -1), resizeCursor(-1, 1)]).toEqual(['nesw-resize', 'nesw-resize']);
});
