import { describe, expect, test } from 'vitest';
import {
  dayPicture,
  nightLook,
  nightPicture,
  plateContrast,
  turnedBy,
  type NightLight,
  type Picture,
} from '../../../src/draw/person/exposed.ts';
import { headSubject } from '../../../src/draw/person/head.ts';
import { plateSubject } from '../../../src/draw/person/plate.ts';
import { sampled, type Stands } from '../../../src/draw/person/sampled.ts';
import type { Subject } from '../../../src/draw/person/subject.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';

const HALF: NightLight = { kind: 'infrared', share: 0.5 };

const camera = cameraWith({ eye: [0, 0, 1], focalLength: 6 });

function taken(subject: Subject, stands: Stands) {
  const picture = sampled(camera, subject, stands, 0);
  if (picture === null) throw new Error('no picture');
  return picture;
}
const plate = taken(plateSubject, { at: [0, 6, 1], looks: 180 });
const face = taken(headSubject(false), { at: [0, 6, 1], looks: 180 });

/** Mean and spread of a picture, of 255. */
function levels({ bytes }: Picture): { mean: number; spread: number } {
  const green = Array.from(bytes).filter((_, at) => at % 4 === 1);
  const mean = green.reduce((all, one) => all + one, 0) / green.length;
  const spread = Math.sqrt(green.reduce((all, one) => all + (one - mean) ** 2, 0) / green.length);
  return { mean, spread };
}

/** How much darker characters are than their plate, of 255, as they lie by day; grain is averaged away. */
function characters({ bytes }: Picture): number {
  const day = dayPicture(plate).bytes;
  const mean = (isOf: (value: number) => boolean): number => {
    const some = Array.from(bytes).filter((_, at) => at % 4 === 1 && isOf(day[at] ?? 0));
    return some.reduce((all, one) => all + one, 0) / some.length;
  };
  return mean((value) => value > 220) - mean((value) => value < 60);
}

describe('light at night (common practice, no source), by the inverse square and the exposure', () => {
  test('at half the range and 1/25 s a picture is fair; at the whole of it there is a quarter of the light', () => {
    expect(nightLook(HALF, 40)).toEqual({ brightness: 1, grain: 15 / 255 });
    // What is missing is lifted fourfold, and the grain with it.
    expect(nightLook({ kind: 'infrared', share: 1 }, 40)).toEqual({ brightness: 1, grain: 60 / 255 });
    expect(nightLook({ kind: 'infrared', share: 1 }, 20).brightness).toBeCloseTo(0.5, 12);
    expect(nightLook({ kind: 'lamp' }, 1).brightness).toBeCloseTo(4 / 40, 12);
  });

  test('twice as far needs four times the exposure', () => {
    for (const share of [0.2, 0.35])
      expect(nightLook({ kind: 'infrared', share: 2 * share }, 12).brightness).toBeCloseTo(
        nightLook({ kind: 'infrared', share }, 3).brightness,
        12,
      );
  });

  test('what nothing lights stays dark', () => {
    const { mean } = levels(nightPicture(face, null, 40, false));
    expect(mean).toBeLessThan(15);
    expect(levels(nightPicture(face, HALF, 40, false)).mean).toBeGreaterThan(60);
  });

  test('a short exposure that freezes leaves a face dark', () => {
    const long = levels(nightPicture(face, HALF, 40, false));
    const short = levels(nightPicture(face, HALF, 1, false));
    expect(short.mean).toBeLessThan(long.mean - 30);
  });
});

describe('no plate is readable at night unless the exposure allows it', () => {
  test('by day its characters stand out', () => {
    expect(characters(dayPicture(plate))).toBeGreaterThan(120);
  });

  test('in the camera’s own infrared it burns out at 1/25 s, and not at 1/1000 s', () => {
    expect(characters(nightPicture(plate, HALF, 40, true))).toBeLessThan(40);
    expect(characters(nightPicture(plate, HALF, 1, true))).toBeGreaterThan(100);
    expect(plateContrast(HALF, 40)).toBeLessThan(0.1);
    expect(plateContrast(HALF, 1)).toBeGreaterThan(0.5);
  });

  test('the limit that is said goes with the picture: of exposures, those that burn out stand out least', () => {
    const exposures = [0.5, 1, 2, 4, 8, 20, 40];
    const contrasts = exposures.map((exposure) => plateContrast(HALF, exposure));
    expect(contrasts).toEqual(contrasts.toSorted((one, two) => two - one));
    const burnt = exposures.filter((exposure) => plateContrast(HALF, exposure) < 0.3);
    for (const exposure of burnt)
      expect(characters(nightPicture(plate, HALF, exposure, true))).toBeLessThan(90);
  });

  test('unlit it is as dark as the rest', () => {
    expect(characters(nightPicture(plate, null, 40, true))).toBeLessThan(30);
    expect(plateContrast(null, 40)).toBeLessThan(0.3);
  });
});

test('a picture on its side is turned upright by quarters, whole pixels', () => {
  const bytes = new Uint8ClampedArray([
    1, 0, 0, 255, 2, 0, 0, 255, 3, 0, 0, 255, 4, 0, 0, 255, 5, 0, 0, 255, 6, 0, 0, 255,
  ]);
  const reds = ({ bytes: out }: Picture) => Array.from(out).filter((_, at) => at % 4 === 0);
  // 1 2 3 over 4 5 6, a quarter clockwise: 4 1, 5 2, 6 3.
  const turned = turnedBy({ width: 3, height: 2, step: 1, bytes }, 1);
  expect([turned.width, turned.height, reds(turned)]).toEqual([2, 3, [4, 1, 5, 2, 6, 3]]);
  expect(reds(turnedBy({ width: 3, height: 2, step: 1, bytes }, -2))).toEqual([6, 5, 4, 3, 2, 1]);
});

test('a head in a rolled camera comes out upright', () => {
  const rolled = sampled({ ...camera, roll: 90 }, headSubject(false), { at: [0, 6, 1], looks: 180 }, 0);
  if (rolled === null) throw new Error('no picture');
  const [upright, turned] = [dayPicture(face), turnedBy(dayPicture(rolled), 1)];
  // The coat is below: the lower edge is bluer than the upper in both.
  const blue = ({ bytes, width, height }: Picture, row: number) => {
    const at = 4 * (Math.round(row * (height - 1)) * width + Math.floor(width / 2));
    return (bytes[at + 2] ?? 0) - (bytes[at] ?? 0);
  };
  for (const picture of [upright, turned]) expect(blue(picture, 1)).toBeGreaterThan(blue(picture, 0) + 20);
});
