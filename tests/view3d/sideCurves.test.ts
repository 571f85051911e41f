import { describe, expect, test } from 'vitest';
import type { Looks } from '../../src/coverage/target.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { sideCurves } from '../../src/view3d/wash/sideCurves.ts';

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

const bearingOf = (dx: number, dy: number): number => (Math.atan2(dx, dy) * 180) / Math.PI;

/** The angle in plan between where a face looks and the camera, by two bearings. */
function fromTheSide([x, y]: readonly [number, number], looks: Looks): number {
  const way = looks.kind === 'bearing' ? looks.bearing : bearingOf(looks.at[0] - x, looks.at[1] - y);
  const off = Math.abs(bearingOf(camera.eye[0] - x, camera.eye[1] - y) - way) % 360;
  return Math.min(off, 360 - off);
}

describe.each([[{ kind: 'bearing', bearing: 200 }], [{ kind: 'place', at: [9, 5] }]] satisfies [Looks][])(
  'faces that look by %j',
  (looks) => {
    test.each([45, 60, 90, 120])('are seen from %d° on the curves of that limit', (side) => {
      const curves = sideCurves({ camera }, [{ above: 20, side, band: 3 }], looks);
      expect(curves).toHaveLength(2);
      const found = curves.map((line) =>
        line
          .filter(([x, y]) => Math.hypot(x - camera.eye[0], y - camera.eye[1]) > 0.5)
          .filter(([x, y]) => looks.kind === 'bearing' || Math.hypot(x - looks.at[0], y - looks.at[1]) > 0.5)
          .map((point) => fromTheSide(point, looks)),
      );
      for (const angles of found) {
        expect(angles.length).toBeGreaterThan(0);
        // On a circle the other arc sees both under the rest of 180°.
        for (const angle of angles)
          expect(Math.min(Math.abs(angle - side), Math.abs(angle - (180 - side)))).toBeLessThan(1e-6);
        expect(angles.some((angle) => Math.abs(angle - side) < 1e-6)).toBe(true);
      }
    });
  },
);

test('faces that may look anywhere have no such curve', () => {
  expect(sideCurves({ camera }, [{ above: 20, side: 45, band: 3 }], undefined)).toEqual([]);
});
