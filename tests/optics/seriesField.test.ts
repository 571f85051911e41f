import { expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import { densityAt } from '../../src/optics/density.ts';
import { greatestAngleRad } from '../../src/optics/lens.ts';
import { imageFromSite } from '../../src/optics/projection.ts';
import { SeriesField } from '../../src/optics/seriesField.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { cameraWith } from './sampleCamera.ts';

test('within and beyond its series it is what the plain formulae of image and density tell, for every bent law', () => {
  const chance = chanceFrom(63);
  let [imaged, none] = [0, 0];
  for (let trial = 0; trial < trials(4000, 40_000); trial += 1) {
    const camera = cameraWith({
      k: chance.pick([0, 0.5, -0.5, -1, chance.between(-1, 0.999)]),
      pan: chance.between(0, 360),
      tilt: chance.between(-20, 90),
      roll: chance.between(-30, 30),
      focalLength: chance.between(1, 6),
    });
    const field = new SeriesField(camera, Math.min(greatestAngleRad(camera.k), chance.between(0.1, 2)));
    const straight = chance.between(0, 1) < 0.05;
    const away: Vec3 = [
      straight ? 0 : chance.between(-20, 20),
      straight ? 0 : chance.between(-20, 20),
      chance.between(-8, 4),
    ];
    field.at(...away);
    const point: Vec3 = [camera.eye[0] + away[0], camera.eye[1] + away[1], camera.eye[2] + away[2]];
    const at = imageFromSite(camera, point);
    const says = `trial ${trial}, k ${camera.k}`;
    expect(field.margin >= 0, `seed 63, ${says}`).toBe(at !== null);
    if (at === null) {
      none += 1;
      continue;
    }
    imaged += 1;
    const { width, height } = camera.frame;
    const wanted = [densityAt(camera, point)?.horizontal ?? Number.NaN, at.u - width / 2, at.v - height / 2];
    [field.density, field.right, field.below].forEach((n, which) =>
      expect(Math.abs(n - (wanted[which] ?? 0)) / (1 + Math.abs(n)), `seed 63, ${says}`).toBeLessThan(1e-8),
    );
  }
  expect(Math.min(imaged, none)).toBeGreaterThan(200);
});
