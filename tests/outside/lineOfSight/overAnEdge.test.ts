/*
 * Sources. Seating: C = D (N + R)/(D + T) − R, N = (R + C)(D + T)/D − R, and the inputs, from Plus magazine, "Stadium
 * Sightline", and P. Shepherd's worksheet of the University of Bath (both read); results computed. Shadow of a wall: hidden
 * from d to d (H − z)/(H − w), by similar triangles, computed. Numbers and formulae only.
 */
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import { reachOf } from '../../../src/coverage/reach.ts';
import { BandRule } from '../../../src/coverage/rule.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { horizontalPlane } from '../../../src/base/plane.ts';
import { sightOf } from '../../../src/sight/sightOf.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';
import { boxSolid } from '../../sight/boxSolid.ts';
import { clearOver, turningPoint } from './clear.ts';

describe('the sight line from a seat to the edge of the pitch', () => {
  // D to the front eye, R its height over the pitch, T depth of a row.
  const [D, R, T] = [30, 10, 1];
  /** Height above the front eye up to which something there leaves the line free, with a riser of N. */
  const clearance = (N: number): number => {
    const seat: Vec3 = [D + T, 0, R + N];
    return turningPoint(
      (height) => clearOver([boxSolid('head', [D + 0.05, 0, 0], [0.1, 1, R + height])])(seat, [0, 0, 0]),
      0,
      1,
    );
  };

  test('a riser of 0.488333 m clears the row in front by 0.15 m', () => {
    expect(Math.abs(clearance(0.488333) - 0.15)).toBeLessThan(1.5e-6);
  });

  test('a riser of 0.5 m clears it by 0.161290 m', () => {
    expect(Math.abs(clearance(0.5) - 0.16129)).toBeLessThan(1.5e-6);
  });

  test('on the pitch all is hidden up to its edge where the head rises to that line: the exact outline', () => {
    const head = boxSolid('head', [D + 0.05, 0, 0], [0.1, 200, R + 0.15]);
    const camera = cameraWith({
      eye: [D + T, 0, R + 0.488333],
      pan: 270,
      tilt: 20,
      focalLength: 2,
      sensor: { width: 4, height: 4 },
    });
    const window = [
      [-20, -1],
      [D, -1],
      [D, 1],
      [-20, 1],
    ] as const;
    const { seen } = sightOf(camera, horizontalPlane(0), window, facetsOf([head])).sight;
    // Of the strip 2 m wide, what lies beyond the edge at x = 0 is seen and nothing before it.
    expect(Math.abs(seen.area - 40)).toBeLessThan(1e-3);
    const xs = seen.pieces.flatMap(({ from, to }) => [from[0], to[0]]);
    expect(Math.abs(Math.max(...xs))).toBeLessThan(1e-3);
  });
});

describe('the shadow of a wall', () => {
  const rows = [
    { H: 3, w: 2, d: 10, z: 0, end: 30 },
    { H: 3, w: 2, d: 10, z: 1.6, end: 14 },
    { H: 3, w: 2.4, d: 6, z: 0.5, end: 25 },
    { H: 2.5, w: 1.8, d: 4, z: 0, end: 14.285714 },
  ] as const;

  test.each(rows)(
    '$w m high, far face $d m from a camera $H m up, ends at $end m on z $z',
    ({ H, w, d, z, end }) => {
      const wall = boxSolid('wall', [0, d - 0.05, 0], [100, 0.1, w]);
      const camera = cameraWith({ eye: [0, 0, H], tilt: 5, focalLength: 1, sensor: { width: 2, height: 4 } });
      const window = [
        [-0.5, d + 0.001],
        [0.5, d + 0.001],
        [0.5, 50],
        [-0.5, 50],
      ] as const;
      const { seen } = sightOf(camera, horizontalPlane(z), window, facetsOf([wall])).sight;
      expect(Math.abs(50 - seen.area - end)).toBeLessThan(1e-6);
      const isClear = clearOver([wall]);
      const free = (y: number) => isClear(camera.eye, [0, y, z]);
      expect(Math.abs(turningPoint((y) => !free(y), d + 0.01, 50) - end)).toBeLessThan(1e-5);
    },
  );

  test.each(rows)(
    'of $w m ends so that ground asked for up to $end m is all hidden, and from there on all seen',
    (row) => {
      const { H, w, d, z } = row;
      const wall = boxSolid('wall', [0, d - 0.05, 0], [100, 0.1, w]);
      const camera = cameraWith({ eye: [0, 0, H], tilt: 5, focalLength: 1, sensor: { width: 2, height: 4 } });
      const end = (d * (H - z)) / (H - w);
      const seenBetween = (from: number, to: number): number => {
        const window = [
          [-0.5, from],
          [0.5, from],
          [0.5, to],
          [-0.5, to],
        ] as const;
        return sightOf(camera, horizontalPlane(z), window, facetsOf([wall])).sight.seen.area;
      };
      expect(seenBetween(d + 0.001, end)).toBeLessThan(1e-8);
      expect(Math.abs(seenBetween(end, end + 7) - 7)).toBeLessThan(1e-8);
    },
  );

  test('parts what a camera reaches into before and behind', () => {
    const wall = boxSolid('wall', [0, 9.95, 0], [100, 0.1, 2]);
    const camera = cameraWith({
      eye: [0, 0, 3],
      tilt: 5,
      focalLength: 1,
      sensor: { width: 2, height: 4 },
    });
    const reach = (range: number) => {
      const rule = new BandRule([{ key: 'any', name: 'any', density: 1e-9 }], [], range);
      return (
        reachOf({ ...camera, range }, horizontalPlane(0), facetsOf([wall]), rule, 1, false).byBand[0] ?? 0
      );
    };
    // A range that ends within the shadow reaches to the wall's near face; one past its end, to the range.
    expect(reach(29)).toBeCloseTo(9.9, 6);
    expect(reach(40)).toBeCloseTo(Math.sqrt(40 ** 2 - 9), 6);
  });
});
