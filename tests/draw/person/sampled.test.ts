import { describe, expect, test } from 'vitest';
import { aimAt } from '../../../src/optics/projection.ts';
import type { Camera } from '../../../src/optics/camera.ts';
import { headSubject, peakHides } from '../../../src/draw/person/head.ts';
import { parcelSubject } from '../../../src/draw/person/parcel.ts';
import { plateSubject } from '../../../src/draw/person/plate.ts';
import { sampled, towardsCamera, type Sampled } from '../../../src/draw/person/sampled.ts';
import { smeared } from '../../../src/draw/person/spread.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { cameraWith, LAWS } from '../../optics/sampleCamera.ts';
import { plainImage } from '../../oracle/plainCamera.ts';

const sum = (plane: Float32Array): number => plane.reduce((all, one) => all + one, 0);

function taken(picture: Sampled | null): Sampled {
  if (picture === null) throw new Error('no picture');
  return picture;
}

/** The area of the corners' image, px², by a camera written down anew for tests. */
function imageArea(camera: Camera, corners: readonly (readonly number[])[]): number {
  const places = corners.map((corner) => plainImage(camera, corner));
  return Math.abs(
    places.reduce((area, one, at) => {
      const two = places[(at + 1) % places.length];
      return one && two ? area + (one[0] * two[1] - two[0] * one[1]) / 2 : Number.NaN;
    }, 0),
  );
}

test('a car’s front covers as many pixels as its corners enclose, by any lens, height, aim and roll', () => {
  const chance = chanceFrom(5);
  for (let trial = 0; trial < trials(5, 200); trial += 1) {
    const at = [chance.between(-2, 2), chance.between(4, 12), 0.5] as const;
    const eye = [0, 0, chance.between(0.4, 2.2)] as const;
    const { pan, tilt } = aimAt(eye, at, 0);
    const camera = cameraWith({
      eye,
      pan: pan + chance.between(-20, 20),
      tilt: tilt + chance.between(-10, 10),
      roll: chance.pick([0, 90, 20]),
      k: chance.pick(LAWS),
      focalLength: chance.between(2.8, 8),
    });
    const looks = pan + 180 + chance.between(-15, 15);
    const [c, s] = [Math.cos((looks * Math.PI) / 180), Math.sin((looks * Math.PI) / 180)];
    // The panel around the plate, 0.58 × 0.17 m.
    const corners = [
      [-0.29, -0.085],
      [0.29, -0.085],
      [0.29, 0.085],
      [-0.29, 0.085],
    ].map(([x = 0, z = 0]) => [at[0] + c * x, at[1] - s * x, at[2] + z]);
    const { cover, step } = taken(sampled(camera, plateSubject, { at, looks }, 6));
    const wanted = imageArea(camera, corners);
    expect(Math.abs((sum(cover) * step * step) / wanted - 1), `trial ${trial}`).toBeLessThan(0.012);
  }
});

/** 6 m before a level pinhole of 2133.33 px: 355.6 px/m by hand, both ways. */
const LEVEL = cameraWith({
  eye: [0, 0, 1.6],
  focalLength: 4,
  sensor: { width: 4.8, height: 2.7 },
  frame: { width: 2560, height: 1440 },
});
const FACE = { at: [0, 6, 1.6], looks: 180 } as const;

test('a pixel is covered as far as its square is: edges of a car’s front fall where they do within pixels', () => {
  // 34.3 px/m: half of 0.58 m is 9.9556 px right and left of the middle of the picture, 1280, by hand.
  const far = { ...LEVEL, eye: [0, 0, 0.5], focalLength: 2 } as const;
  const { cover, width, height, step } = taken(
    sampled(far, plateSubject, { at: [0, 31.0714, 0.5], looks: 180 }, 0),
  );
  expect(step).toBe(1);
  // 0.17 m are 5.84 px: a row beside the middle is covered wholly from above to below.
  const row = Array.from(
    cover.subarray(Math.floor(height / 2) * width, (Math.floor(height / 2) + 1) * width),
  );
  const covered = row.filter((share) => share > 0);
  expect(covered).toHaveLength(20);
  expect(covered.slice(1, -1).every((share) => share > 0.999)).toBe(true);
  for (const end of [covered[0], covered.at(-1)]) expect(end).toBeCloseTo(0.9556, 1);
  // Half a pixel to the side they are covered otherwise, and as much in all.
  const aside = taken(
    sampled(
      { ...far, sensor: { width: 4.8, height: 2.7 }, pan: (0.4 / 1066.7) * (180 / Math.PI) },
      plateSubject,
      { at: [0, 31.0714, 0.5], looks: 180 },
      0,
    ),
  );
  const other = Array.from(aside.cover.subarray(Math.floor(aside.height / 2) * aside.width)).slice(
    0,
    aside.width,
  );
  const parts = other.filter((share) => share > 0);
  expect(parts.reduce((all, one) => all + one, 0)).toBeCloseTo(19.911, 0);
  expect(parts[0]).toBeCloseTo(0.3556, 1);
});

test('a head is 16 cm wide at the brow: 56.9 px of 355.6 px/m, by hand', () => {
  // The sight line grazes the round head a little before its middle: 6 m less 5 mm.
  const { cover, width, height, step } = taken(sampled(LEVEL, headSubject(false), FACE, 0));
  const row = Math.round(height / 2 - (0.045 * 355.56) / step);
  const across = sum(cover.subarray(row * width, (row + 1) * width)) * step;
  expect(Math.abs(across - 0.16 * 355.56 * Math.sqrt(1 - (0.045 / 0.118) ** 2))).toBeLessThan(9);
});

test('light does not hang on where the grid of pixels lies', () => {
  const lights = [0, 0.3, 0.5, 0.8].map((part) => {
    const camera = { ...LEVEL, focalLength: 1, pan: (part / 533.3) * (180 / Math.PI) };
    const { day, cover } = taken(sampled(camera, parcelSubject, { at: [0, 6, 1.6], looks: 160 }, 4));
    return sum(day) / sum(cover);
  });
  for (const light of lights) expect(Math.abs(light / (lights[0] ?? 1) - 1)).toBeLessThan(0.01);
});

test('what stands at the lens, or behind it, has no picture', () => {
  expect(sampled(LEVEL, headSubject(false), { at: [0, 0.1, 1.6], looks: 180 }, 0)).toBeNull();
  expect(sampled(LEVEL, headSubject(false), { at: [0, -5, 1.6], looks: 180 }, 0)).toBeNull();
});

test('of what is very near each square stands for several pixels, and says so', () => {
  const near = taken(
    sampled({ ...LEVEL, focalLength: 12 }, headSubject(false), { at: [0, 2, 1.6], looks: 180 }, 0),
  );
  expect(near.step).toBeGreaterThan(1);
  expect(near.width).toBeLessThan(200);
  expect(taken(sampled({ ...LEVEL, focalLength: 2 }, headSubject(false), FACE, 0)).step).toBe(1);
});

describe('the cap', () => {
  const from = (depression: number) => {
    const up = 1.6 + 4 * Math.tan((depression * Math.PI) / 180);
    return towardsCamera({ ...LEVEL, eye: [0, 2, up] }, { at: [0, 6, 1.6], looks: 180 });
  };

  test('hides the eyes from about 20° above, and leaves them from below that', () => {
    expect([0, 5, 10, 15].map((angle) => peakHides(from(angle)))).toEqual([false, false, false, false]);
    expect([25, 35, 50].map((angle) => peakHides(from(angle)))).toEqual([true, true, true]);
  });

  test('takes eyes and rims out of the picture that is steep, not out of the level one', () => {
    // Whites of the eyes are the brightest of a face: none is left under the peak.
    const brightest = (up: number, cap: boolean): number => {
      const eye = [0, 2, up] as const;
      const camera = { ...LEVEL, eye, ...aimAt(eye, FACE.at, 0), focalLength: 6 };
      const { day, cover } = taken(sampled(camera, headSubject(cap), FACE, 0));
      return cover.reduce(
        (most, share, at) => (share > 0.999 ? Math.max(most, day[3 * at + 2] ?? 0) : most),
        0,
      );
    };
    expect(brightest(4.2, false)).toBeGreaterThan(0.4);
    expect(brightest(4.2, true)).toBeLessThan(0.4);
    expect(brightest(1.6, true)).toBeGreaterThan(0.4);
  });
});

describe('smear', () => {
  const still = taken(sampled(LEVEL, plateSubject, FACE, 20));
  /** Middle and mean square of where the subject is, along the columns. */
  const spread = ({ cover, width }: Sampled): readonly [number, number] => {
    let [all, first, second] = [0, 0, 0];
    cover.forEach((share, at) => {
      const x = at % width;
      all += share;
      first += share * x;
      second += share * x * x;
    });
    return [first / all, second / all - (first / all) ** 2];
  };

  test('keeps all light, stays about its middle, and widens by a twelfth of its square', () => {
    // The variance of an even spread over a length L is L²/12 (any text on statistics).
    for (const length of [2, 7.5, 20]) {
      const moved = smeared(still, [length, 0]);
      const far = length / still.step;
      expect(sum(moved.cover)).toBeCloseTo(sum(still.cover), 1);
      expect(spread(moved)[0]).toBeCloseTo(spread(still)[0], 2);
      const wider = spread(moved)[1] - spread(still)[1];
      // Places between pixels are shared by the two beside them, which widens by no more than a quarter of a pixel².
      expect(Math.abs(wider - far ** 2 / 12)).toBeLessThan(0.3);
    }
  });

  test('of less than a part of a pixel changes nothing', () => {
    expect(smeared(still, [0.05, 0])).toBe(still);
  });
});
