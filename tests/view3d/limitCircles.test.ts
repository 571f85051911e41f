import { describe, expect, test } from 'vitest';
import type { Camera } from '../../src/optics/camera.ts';
import { depressionAt } from '../../src/optics/density.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { limitCircles } from '../../src/view3d/wash/limitCircles.ts';

const camera: Camera = {
  id: 'C1',
  name: 'C1',
  eye: [4, -2, 3.1],
  pan: 0,
  tilt: 20,
  roll: 0,
  focalLength: 2.8,
  k: 1,
  sensor: { width: 5.37, height: 3.04 },
  frame: { width: 2688, height: 1520 },
  range: 25,
};
const plane = horizontalPlane(1.6);

describe('where a limit ends a band', () => {
  test('the range is the distance from the lens, not over ground', () => {
    const [range] = limitCircles({ camera, plane }, []);
    for (const [x, y] of range ?? []) expect(Math.hypot(x - 4, y + 2, 1.6 - 3.1)).toBeCloseTo(25, 2);
  });

  test('a face’s limit from above is a circle of one depression', () => {
    const circles = limitCircles({ camera, plane }, [
      { above: 20, side: 90, band: 3 },
      { above: 30, side: 90, band: 2 },
    ]);
    expect(circles).toHaveLength(3);
    for (const [x, y] of circles[1] ?? []) expect(depressionAt(camera.eye, [x, y, 1.6])).toBeCloseTo(20, 6);
    for (const [x, y] of circles[2] ?? []) expect(depressionAt(camera.eye, [x, y, 1.6])).toBeCloseTo(30, 6);
  });

  test('a lens below the faces has no limit from above', () => {
    const low: Camera = { ...camera, eye: [4, -2, 1.2] };
    expect(limitCircles({ camera: low, plane }, [{ above: 20, side: 90, band: 3 }])).toHaveLength(1);
  });

  test('a plane out of range has no circle', () => {
    expect(limitCircles({ camera: { ...camera, range: 1 }, plane }, [])).toEqual([]);
  });
});
