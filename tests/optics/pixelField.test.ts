import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import { densityAt } from '../../src/optics/density.ts';
import { greatestAngleRad } from '../../src/optics/lens.ts';
import { PixelField } from '../../src/optics/pixelField.ts';
import { imageFromSite } from '../../src/optics/projection.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { anyCamera, cameraWith, LAWS } from './sampleCamera.ts';

test('the fast field gives the image, the frame test and the density of the plain formulae, for every law', () => {
  const chance = chanceFrom(51);
  const met = { framed: 0, imaged: 0, none: 0 };
  for (let trial = 0; trial < trials(3000, 100_000); trial += 1) {
    const camera = anyCamera(chance);
    const field = new PixelField(camera);
    const isBelow = chance.next() < 0.1;
    const away: Vec3 = [
      isBelow ? 0 : chance.between(-20, 20),
      isBelow ? 0 : chance.between(-20, 20),
      chance.between(-8, 4),
    ];
    const point: Vec3 = [camera.eye[0] + away[0], camera.eye[1] + away[1], camera.eye[2] + away[2]];
    const framed = field.at(...away);
    const at = imageFromSite(camera, point);
    const found = [framed, field.density, field.right, field.below];
    const { width, height } = camera.frame;
    const edge = at === null ? -Infinity : Math.min(at.u, at.v, width - at.u, height - at.v);
    // On the frame's very edge the last bit decides.
    const wanted =
      at === null
        ? [false, camera.k >= 0.5 ? 0 : field.density, field.right, field.below]
        : [
            Math.abs(edge) < 1e-6 ? framed : edge > 0,
            densityAt(camera, point)?.horizontal ?? Number.NaN,
            at.u - width / 2,
            at.v - height / 2,
          ];
    const apart = found.map(
      (n, index) => Math.abs(Number(n) - Number(wanted[index])) / (1 + Math.abs(Number(n))),
    );
    expect(Math.max(...apart), `seed 51, trial ${trial}, k ${camera.k}`).toBeLessThan(1e-8);
    expect(field.marginRad >= 0).toBe(at !== null);
    if (at === null) met.none += 1;
    else met.imaged += 1;
    if (edge > 0) met.framed += 1;
  }
  expect(Math.min(met.framed, met.imaged - met.framed, met.none)).toBeGreaterThan(200);
});

describe('the margin to the end of the law', () => {
  test('is how far within the greatest angle the target lies, for a bent lens', () => {
    for (const k of LAWS) {
      if (k === 1) continue;
      const field = new PixelField(cameraWith({ k }));
      // On the horizon, 40° to the right of the axis.
      field.at(5 * Math.sin((40 * Math.PI) / 180), 5 * Math.cos((40 * Math.PI) / 180), 0);
      expect(field.marginRad).toBeCloseTo(greatestAngleRad(k) - (40 * Math.PI) / 180, 12);
    }
  });

  test('falls below nothing just past it, on either side of the law’s last ray', () => {
    // The image circle ends just within the sensor.
    const field = new PixelField(cameraWith({ k: -1, focalLength: 2.7 }));
    expect([field.at(5, 1e-6, 0), Math.sign(field.marginRad)]).toEqual([true, 1]);
    expect([field.at(5, -1e-6, 0), Math.sign(field.marginRad)]).toEqual([false, -1]);
  });

  test('is all that turns there: density and place go on smoothly, as areas along curves need', () => {
    const field = new PixelField(cameraWith({ k: -1, focalLength: 1.7 }));
    const beside = (y: number) => {
      field.at(5, y, -2);
      return [field.density, field.right, field.below];
    };
    const [before, after] = [beside(1e-7), beside(-1e-7)];
    before.forEach((value, i) =>
      expect(Math.abs(value - (after[i] ?? 0)) / (1 + Math.abs(value))).toBeLessThan(1e-6),
    );
  });
});
