import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import type { SketchPlate } from '../../src/editor/tools/chart.ts';
import { dimensionLines, platePlaces } from '../../src/view3d/drawing/dimensionLines.ts';
import type { Orbit } from '../../src/view3d/orbit.ts';
import { sheetOf } from '../../src/view3d/sheet.ts';

const above: Orbit = { pivot: [5, 5, 0], bearing: 0, elevation: 90, distance: 60 };
const sheet = sheetOf(above, 800, 600);
const ring: readonly Vec3[] = [
  [0, 0, 0],
  [10, 0, 0],
  [10, 10, 0],
  [0, 10, 0],
];
const lines = [{ points: ring, closed: true, style: 'fixed' }] as const;
const south: SketchPlate = {
  at: [5, 0, 0],
  text: '10.00',
  tone: 'measure',
  between: [ring[0] ?? [0, 0, 0], ring[1] ?? [0, 0, 0]],
};
const sizeOf = () => ({ width: 50, height: 20 });

describe('dimensions of a sketch', () => {
  test('stand outside of what is drawn, 22 px off', () => {
    const { middles, ticks } = dimensionLines(sheet, { lines, plates: [south] });
    const edge = sheet.spotFromSite([5, 0, 0]);
    expect(middles.get(south)?.x).toBeCloseTo(edge?.x ?? 0, 6);
    // South is down on the window.
    expect(middles.get(south)?.y).toBeCloseTo((edge?.y ?? 0) + 22, 6);
    expect(ticks.match(/M/g)).toHaveLength(2);
  });

  test('stand on the side on which their plate is asked', () => {
    const inside = { ...south, at: [5, 3, 0] as const };
    const { middles } = dimensionLines(sheet, { lines, plates: [inside] });
    const edge = sheet.spotFromSite([5, 0, 0]);
    expect(middles.get(inside)?.y).toBeCloseTo((edge?.y ?? 0) - 22, 6);
  });

  test('no plate covers another; what has no room is left out', () => {
    const word: SketchPlate = { at: [5, 5, 0], text: 'corner of Garage', tone: 'snap' };
    const many = Array.from({ length: 12 }, () => ({ ...word }));
    const placed = platePlaces(sheet, { plates: many }, new Map(), sizeOf);
    expect(placed.length).toBeGreaterThan(2);
    expect(placed.length).toBeLessThan(12);
    placed.forEach((one, i) =>
      placed.slice(i + 1).forEach((other) => {
        expect(Math.abs(one.x - other.x) >= 50 || Math.abs(one.y - other.y) >= 20).toBe(true);
      }),
    );
  });
});
