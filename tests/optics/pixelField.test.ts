import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { densityAt } from '../../src/optics/density.ts';
import { greatestAngleRad } from '../../src/optics/lens.ts';
import { PixelField } from '../../src/optics/pixelField.ts';
import { imageFromSite } from '../../src/optics/projection.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { leastHorizontalDensity, numericalDensity } from '../oracle/numericalDensity.ts';
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

/** Far enough from where a law ends and from the lens for differences to be good. */
const isPlain = (camera: Camera, point: Vec3): boolean => {
  const at = imageFromSite(camera, point);
  const away = Math.hypot(point[0] - camera.eye[0], point[1] - camera.eye[1], point[2] - camera.eye[2]);
  if (at === null || away < 0.5) return false;
  return Math.abs(at.u) < 4 * camera.frame.width && Math.abs(at.v) < 4 * camera.frame.height;
};

test('along a direction it is how far the image goes as the target goes that way', () => {
  const chance = chanceFrom(52);
  const met = { flat: 0, bent: 0, none: 0 };
  for (let trial = 0; trial < trials(600, 20_000); trial += 1) {
    const any = anyCamera(chance);
    const camera = chance.next() < 0.3 ? { ...any, k: 1 } : any;
    const away: Vec3 = [chance.between(-20, 20), chance.between(-20, 20), chance.between(-8, 4)];
    const point: Vec3 = [camera.eye[0] + away[0], camera.eye[1] + away[1], camera.eye[2] + away[2]];
    const [turn, lift] = [chance.between(0, 2 * Math.PI), chance.between(-1, 1)];
    const level = Math.sqrt(1 - lift * lift);
    const along: Vec3 = [Math.cos(turn) * level, Math.sin(turn) * level, lift];
    const found = new PixelField(camera).along(...away, along);
    const hasNone = imageFromSite(camera, point) === null && camera.k >= 0.5;
    if (hasNone) met.none += 1;
    expect(hasNone && found !== 0, `seed 52, trial ${trial}`).toBe(false);
    if (!isPlain(camera, point)) continue;
    const wanted = numericalDensity(camera, point, along);
    expect(Math.abs(found / wanted - 1), `seed 52, trial ${trial}, k ${camera.k}`).toBeLessThan(1e-4);
    if (camera.k === 1) met.flat += 1;
    else met.bent += 1;
  }
  expect(Math.min(met.flat, met.bent, met.none)).toBeGreaterThan(50);
});

test('along a row it is the density at each of its targets, in the frame of a bent lens and before a flat one', () => {
  const chance = chanceFrom(53);
  const met = { flat: 0, bent: 0, out: 0, below: 0 };
  for (let trial = 0; trial < trials(500, 10_000); trial += 1) {
    const any = anyCamera(chance);
    const camera = chance.next() < 0.3 ? { ...any, k: 1 } : any;
    const step: Vec3 = chance.pick([
      [0.7, 0, 0],
      [0.3, 0.4, 0],
      [0.5, 0, -0.2],
      [0, 1, 0],
      [0.6, 0, 1],
    ]);
    // Every third row passes straight below or above the lens.
    const isBelow = chance.next() < 1 / 3;
    const start: Vec3 = isBelow
      ? [-5 * step[0], -5 * step[1], chance.between(-6, 3)]
      : [chance.between(-15, 10), chance.between(-15, 15), chance.between(-6, 3)];
    const row = new Float32Array(14).fill(-1);
    new PixelField(camera).fillRow(...start, step, 12, row, 1);
    expect([row[0], row[13]]).toEqual([-1, -1]);
    for (let at = 0; at < 12; at += 1) {
      const away: Vec3 = [start[0] + at * step[0], start[1] + at * step[1], start[2] + at * step[2]];
      const point: Vec3 = [camera.eye[0] + away[0], camera.eye[1] + away[1], camera.eye[2] + away[2]];
      const image = imageFromSite(camera, point);
      const { width, height } = camera.frame;
      const edge =
        image === null ? -1 : Math.min(image.u, image.v, width - image.u, height - image.v) / width;
      const found = row[at + 1] ?? Number.NaN;
      const isOut = camera.k !== 1 && edge < -1e-6;
      const isIn = isPlain(camera, point) && (camera.k === 1 || edge > 1e-6);
      if (isOut) met.out += 1;
      const over = Math.hypot(away[0], away[1]);
      const wanted = (): number =>
        over < 1e-6
          ? leastHorizontalDensity(camera, point)
          : numericalDensity(camera, point, [away[1] / over, -away[0] / over, 0]);
      // Single precision; where the last bit decides whether it is in the frame, nothing is asked.
      const off = isOut ? found : isIn ? Math.abs(found / wanted() - 1) : 0;
      expect(off, `seed 53, trial ${trial}, k ${camera.k}, target ${at}`).toBeLessThan(1e-4);
      if (isIn) {
        if (over < 1e-6) met.below += 1;
        else if (camera.k === 1) met.flat += 1;
        else met.bent += 1;
      }
    }
  }
  expect(Math.min(met.flat, met.bent, met.out)).toBeGreaterThan(50);
  expect(met.below).toBeGreaterThan(10);
});

describe('on the axis itself', () => {
  test('the density is what it is beside it, and the image in the middle', () => {
    for (const k of LAWS) {
      const field = new PixelField(cameraWith({ k }));
      for (const along of [
        [1, 0, 0],
        [0, 0, 1],
        [0.6, 0, 0.8],
      ] as const) {
        const wanted = numericalDensity(cameraWith({ k }), [0, 5, 3], along);
        expect(Math.abs(field.along(0, 5, 0, along) / wanted - 1), `k ${k}`).toBeLessThan(1e-6);
      }
      expect([field.at(0, 0.4, 0), field.at(0, 5, 0)]).toEqual([true, true]);
      expect([field.right, field.below]).toEqual([0, expect.closeTo(0, 12)]);
    }
  });

  test('straight behind there is no image', () => {
    for (const k of LAWS) {
      const field = new PixelField(cameraWith({ k }));
      expect(field.at(0, -5, 0)).toBe(false);
      expect([field.density, field.marginRad < 0]).toEqual([0, true]);
    }
  });
});

describe('what has no image', () => {
  const field = new PixelField(cameraWith());

  test('is far out on its own side', () => {
    for (const [dx, dz, right, below] of [
      [3, 2, 1, -1],
      [-3, 2, -1, -1],
      [-3, -2, -1, 1],
      [0.5, -0.5, 1, 1],
    ] as const) {
      expect(field.at(dx, -4, dz)).toBe(false);
      expect([Math.sign(field.right), Math.sign(field.below)]).toEqual([right, below]);
      expect(Math.min(Math.abs(field.right), Math.abs(field.below))).toBeGreaterThan(1e5);
    }
  });

  test('square to the axis has none either', () => {
    expect(field.at(5, 0, -1)).toBe(false);
    expect([field.density, field.marginRad < 0]).toEqual([0, true]);
  });

  test('leaves nothing for the next, nor takes anything from the last', () => {
    field.at(1, 5, -1);
    const [density, margin] = [field.density, field.marginRad];
    expect(Math.min(density, margin)).toBeGreaterThan(0);
    field.at(1, -5, -1);
    expect(field.density).toBe(0);
    expect(field.marginRad).toBeLessThan(0);
    field.at(1, 5, -1);
    expect([field.density, field.marginRad]).toEqual([density, margin]);
  });
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
    // 170° from the axis, past a law that ends at 120°.
    const past = new PixelField(cameraWith({ k: 0.75 }));
    past.at(5 * Math.sin((170 * Math.PI) / 180), 5 * Math.cos((170 * Math.PI) / 180), 0);
    expect(past.marginRad).toBeCloseTo((-50 * Math.PI) / 180, 12);
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
