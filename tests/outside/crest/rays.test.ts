/*
 * Source: the parabolic crest of a road, y = −x² / (200 K). Two points h1 and h2 above it see each other up to
 * √(200 K h1) + √(200 K h2), wherever they stand on the crest. Heights 1.08 and 0.60 m: two highway documents (excerpts
 * read). K 52.0137 gives 185.00 m, the stopping distance at 100 km/h of the AASHTO Green Book (from memory). Computed.
 */
import { expect, test } from 'vitest';
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import { clearOver, turningPoint } from '../lineOfSight/clear.ts';
import { strip } from '../lineOfSight/strip.ts';

const K = 52.0137;
const crestAt = (x: number): number => -(x * x) / (200 * K);

test('over a crest of K 52.0137 eye and object see each other up to 185.00 m and no further', () => {
  const line = Array.from({ length: 401 }, (_, at) => at - 200);
  const top = line.map((x): Vec2 => [x, crestAt(x)]);
  const below = line.map((x): Vec2 => [x, crestAt(x) - 1]);
  const isClear = clearOver([strip('ground', top, below, [-5, 5], (x, z, y) => [x, y, z])]);
  for (const eyeX of [-120, -106, -93.7, -80.25]) {
    const eye: Vec3 = [eyeX, 0.3, crestAt(eyeX) + 1.08];
    const sees = (distance: number) => isClear(eye, [eyeX + distance, 0.3, crestAt(eyeX + distance) + 0.6]);
    // Of 1 m pieces, the ground between their ends lies up to 0.024 mm below the curve: a few millimetres of sight.
    expect(Math.abs(turningPoint(sees, 100, 250) - 185), `eye at ${eyeX}`).toBeLessThan(0.01);
  }
});
