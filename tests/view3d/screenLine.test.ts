import { describe, expect, test } from 'vitest';
import { add, scale, type Vec3 } from '../../src/base/vector.ts';
import { pathOf, screenLine } from '../../src/view3d/drawing/screenLine.ts';
import type { Orbit } from '../../src/view3d/orbit.ts';
import { sheetOf } from '../../src/view3d/sheet.ts';

const orbit: Orbit = { pivot: [0, 0, 0], bearing: 0, elevation: 41, distance: 40 };
const sheet = sheetOf(orbit, 800, 600);
const square: readonly Vec3[] = [
  [0, 0, 0],
  [4, 0, 0],
  [4, 4, 0],
  [0, 4, 0],
];

describe('a line of the site on the window', () => {
  test('closed, it runs back to its beginning', () => {
    const [piece] = screenLine(sheet, square, true);
    expect(piece).toHaveLength(5);
    expect(piece?.[0]).toEqual(piece?.[4]);
    expect(screenLine(sheet, square, false)[0]).toHaveLength(4);
  });

  test('what runs behind the eye is cut where it passes, and nothing is drawn of what lies behind', () => {
    const behind = add(sheet.eye, scale(sheet.ahead, -10));
    const before = add(sheet.eye, scale(sheet.ahead, 20));
    const [piece, ...more] = screenLine(sheet, [before, behind], false);
    expect(more).toEqual([]);
    expect(piece).toHaveLength(2);
    for (const { x, y } of piece ?? [])
      expect([x, y]).toEqual([expect.closeTo(400, 6), expect.closeTo(300, 6)]);
    expect(screenLine(sheet, [behind, add(behind, [1, 0, 0])], false)).toEqual([]);
    // There and back again: two pieces.
    const aside = add(before, [1, 0, 0]);
    expect(screenLine(sheet, [before, behind, aside], false)).toHaveLength(2);
  });

  test('as a path it has one start a piece', () => {
    expect(
      pathOf([
        [
          { x: 1, y: 2.04 },
          { x: 3, y: 4 },
        ],
      ]),
    ).toBe('M1,2L3,4');
    expect(
      pathOf(
        [
          [
            { x: 1, y: 2 },
            { x: 3, y: 4 },
          ],
        ],
        true,
      ),
    ).toBe('M1,2L3,4Z');
  });
});
