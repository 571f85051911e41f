/*
 * Source: geometry. The frame of a camera H up, straight ahead on a plane at height z: near (H − z)/tan(tilt + V/2), far
 * (H − z)/tan(tilt − V/2), none where tilt ≤ V/2. Metres computed from these forms; no published worked example was found.
 */
import { describe, expect, test } from 'vitest';
import { BandRule } from '../../../src/coverage/rule.ts';
import { reachOf } from '../../../src/coverage/reach.ts';
import type { Camera } from '../../../src/optics/camera.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { horizontalPlane } from '../../../src/base/plane.ts';
import { sightOf } from '../../../src/sight/sightOf.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';

const RANGE = 500;
const NOTHING = facetsOf([]);
// Any density counts: what is asked is the frame.
const ANY = [{ key: 'any', name: 'any', density: 1e-9 }];

const upright = (height: number, tilt: number, vfov: number): Camera =>
  cameraWith({
    eye: [3, 4, height],
    pan: 0,
    tilt,
    focalLength: 4,
    sensor: { width: 4.8, height: 8 * Math.tan((vfov * Math.PI) / 360) },
    range: RANGE,
  });

const ROWS = [
  { H: 3, tilt: 30, V: 45, z: 0, near: 2.302, far: 22.7873 },
  { H: 3, tilt: 30, V: 45, z: 1.6, near: 1.0743, far: 10.6341 },
  { H: 2.6, tilt: 20, V: 33.4, z: 1.6, near: 1.3416, far: 17.3432 },
  { H: 3, tilt: 25, V: 33.4, z: 0, near: 3.3671, far: 20.5643 },
  { H: 3.5, tilt: 15, V: 27.53, z: 0, near: 6.3757, far: 162.3516 },
] as const;

describe.each(ROWS)('H $H m, tilt $tilt°, V $V°, on z $z', ({ H, tilt, V, z, near, far }) => {
  test('near blind distance and reach along the axis', () => {
    const camera = upright(H, tilt, V);
    const rule = new BandRule(ANY, [], RANGE);
    const reach = reachOf(camera, horizontalPlane(z), NOTHING, rule, 1, false);
    expect(Math.abs((reach.nearBlindDistance ?? 0) - near)).toBeLessThan(5.01e-5);
    expect(Math.abs((reach.byBand[0] ?? 0) - far)).toBeLessThan(5.01e-5);
  });

  test('the frame on the plane begins and ends there, and has the area of a trapezium', () => {
    const window = [
      [-400, -400],
      [400, -400],
      [400, 400],
      [-400, 400],
    ] as const;
    const { frame, seen } = sightOf(upright(H, tilt, V), horizontalPlane(z), window, NOTHING).sight;
    const ahead = [...frame].filter((_, at) => at % 2 === 1).map((y) => y - 4);
    expect(Math.abs(Math.min(...ahead) - near)).toBeLessThan(5.01e-5);
    expect(Math.abs(Math.max(...ahead) - far)).toBeLessThan(5.01e-5);
    // Half the width at a distance y ahead is 0.6 of the depth there.
    const rad = (tilt * Math.PI) / 180;
    const half = (y: number) => 0.6 * (y * Math.cos(rad) + (H - z) * Math.sin(rad));
    const [from, to] = [Math.min(...ahead), Math.max(...ahead)];
    expect(Math.abs(seen.area / ((half(from) + half(to)) * (to - from)) - 1)).toBeLessThan(1e-9);
  });
});

test('H 4 m, tilt 20°, V 40.36°: from 4.7367 m, and no far limit but the range', () => {
  const reach = reachOf(
    upright(4, 20, 40.36),
    horizontalPlane(0),
    NOTHING,
    new BandRule(ANY, [], RANGE),
    1,
    false,
  );
  expect(Math.abs((reach.nearBlindDistance ?? 0) - 4.7367)).toBeLessThan(5.01e-5);
  expect(reach.byBand[0]).toBeCloseTo(Math.sqrt(RANGE ** 2 - 16), 5);
});
