/*
 * Source: clearance inside of a horizontal bend of radius R for a sight distance S along it, R (1 − cos(28.65 S / R)),
 * degrees: a highway page (excerpt read), and another citing the AASHTO Green Book, 7th edition, page 3-115. Numbers
 * computed: by the printed form, and exactly, R (1 − cos(S / 2R)). 28.65 is 90/π = 28.6479, rounded.
 */
import { describe, expect, test } from 'vitest';
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { horizontalPlane } from '../../../src/base/plane.ts';
import { sightOf } from '../../../src/sight/sightOf.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';
import { clearOver, turningPoint } from './clear.ts';
import { strip } from './strip.ts';

const ROWS = [
  { R: 100, S: 50, printed: 3.1092, exact: 3.1088 },
  { R: 250, S: 130, printed: 8.4037, exact: 8.4025 },
  { R: 1000, S: 570, printed: 40.3443, exact: 40.3383 },
] as const;

const EYE = 1.08;

/** A wall 3 m high that follows the bend at a radius, of pieces that stray from the arc by less than 0.01 mm. */
function bentWall(radius: number, half: number): Solid {
  const pieces = Math.ceil(half / Math.sqrt(2e-5 / radius));
  const arc = (r: number): readonly Vec2[] =>
    Array.from({ length: pieces + 1 }, (_, at) => {
      const turn = half * ((2 * at) / pieces - 1);
      return [r * Math.sin(turn), r * Math.cos(turn)];
    });
  return strip('wall', arc(radius), arc(radius - 0.3), [0, 3], (x, y, z) => [x, y, z]);
}

/** The point of the bend at an arc length from its middle. */
const onBend = (R: number, arc: number): Vec3 => [R * Math.sin(arc / R), R * Math.cos(arc / R), EYE];

describe.each(ROWS)('a bend of $R m and a sight distance of $S m', ({ R, S, printed, exact }) => {
  test('needs the clearance of the rule to the wall inside: rays', () => {
    const isClear = (clearance: number) =>
      clearOver([bentWall(R - clearance, (0.7 * S) / R)])(onBend(R, -S / 2), onBend(R, S / 2));
    const found = turningPoint((less) => isClear(printed + 0.05 - less), 0, 0.1, 4e-6);
    expect(Math.abs(printed + 0.05 - found - exact)).toBeLessThan(6.1e-5);
    // As far from the printed form as 28.65 is from 90/π.
    expect(Math.abs((printed + 0.05 - found) / printed - 1)).toBeLessThan(2e-4);
  });

  test('is seen along the bend up to just that distance: the exact outline', () => {
    const wall = bentWall(R - exact, (0.7 * S) / R);
    const eye = onBend(R, -S / 2);
    const side = 2 * S;
    const window = [
      [eye[0] - 1, eye[1] - side],
      [eye[0] + side, eye[1] - side],
      [eye[0] + side, eye[1] + side],
      [eye[0] - 1, eye[1] + side],
    ] as const;
    const camera = cameraWith({
      eye,
      pan: 90,
      focalLength: 1,
      sensor: { width: 6, height: 4000 },
      frame: { width: 600, height: 400_000 },
    });
    const { triangles } = sightOf(camera, horizontalPlane(EYE - 0.2), window, facetsOf([wall])).sight.seen;
    const seen = (arc: number) => holds(triangles, onBend(R, arc - S / 2));
    const reached = turningPoint((more) => seen(S * 0.5 + more), 0, S * 0.7);
    // Half the last digit of the clearance and the 0.01 mm of the wall move the end of sight by the slope of the rule.
    const slack = (6.1e-5 * 2) / Math.sin(S / 2 / R);
    expect(Math.abs(S * 0.5 + reached - S)).toBeLessThan(slack);
  });
});

/** Whether a point over ground lies in one of the triangles. */
function holds(triangles: Float64Array, [x, y]: Vec3): boolean {
  for (let at = 0; at < triangles.length; at += 6) {
    const side = (i: number, j: number) => {
      const [ax, ay] = [triangles[at + i * 2] ?? 0, triangles[at + i * 2 + 1] ?? 0];
      const [bx, by] = [triangles[at + j * 2] ?? 0, triangles[at + j * 2 + 1] ?? 0];
      return (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    };
    const [one, two, three] = [side(0, 1), side(1, 2), side(2, 0)];
    if ((one >= 0 && two >= 0 && three >= 0) || (one <= 0 && two <= 0 && three <= 0)) return true;
  }
  return false;
}
