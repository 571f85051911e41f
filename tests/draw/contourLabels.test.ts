import { describe, expect, test } from 'vitest';
import { contourAnchors, type SheetPoint } from '../../src/draw/contourLabels.ts';

const line = (points: readonly (readonly [number, number])[], closed: readonly number[] = []): SheetPoint[] =>
  points.map(([x, y], i) => ({ x, y, open: !closed.includes(i) }));

describe('label places on a contour', () => {
  test('the straightest stretch comes first', () => {
    const straight = Array.from({ length: 20 }, (_, i) => [-160 + i * 8, 300] as const);
    const arc = Array.from(
      { length: 40 },
      (_, i) => [100 * Math.sin(i / 20), 400 - 100 * Math.cos(i / 20)] as const,
    );
    const [first, ...rest] = contourAnchors(line([...straight, ...arc]), 60, 13);
    expect(first?.y).toBeCloseTo(300, 6);
    expect(first?.bend).toBeCloseTo(0, 6);
    expect(rest.at(-1)?.bend).toBeGreaterThan(1);
  });

  test('a line shorter than the label has no place', () => {
    expect(
      contourAnchors(
        line([
          [0, 0],
          [50, 0],
        ]),
        60,
        13,
      ),
    ).toEqual([]);
  });

  test('a stretch that bends too far has none', () => {
    const arc = Array.from({ length: 60 }, (_, i) => [40 * Math.cos(i / 10), 40 * Math.sin(i / 10)] as const);
    expect(contourAnchors(line(arc), 60, 8)).toEqual([]);
    expect(contourAnchors(line(arc), 20, 8).length).toBeGreaterThan(0);
  });

  test('nothing is placed where the line is hidden', () => {
    const points = Array.from({ length: 41 }, (_, i) => [i * 10, 0] as const);
    const anchors = contourAnchors(line(points, [20]), 60, 8);
    expect(anchors.length).toBeGreaterThan(0);
    for (const { x } of anchors) expect(Math.abs(x - 200)).toBeGreaterThan(36);
  });

  test('text stays upright whichever way the line runs', () => {
    for (const [dx, dy] of [
      [1, 1],
      [-1, 1],
      [-1, -1],
      [1, -1],
      [-1, 0],
      [0, -1],
    ] as const) {
      const points = Array.from({ length: 20 }, (_, i) => [i * 10 * dx, i * 10 * dy] as const);
      const [first] = contourAnchors(line(points), 60, 8);
      expect(first?.angle).toBeGreaterThan(-90);
      expect(first?.angle).toBeLessThanOrEqual(90);
    }
  });
});
