import { describe, expect, test } from 'vitest';
import { sheetFaults } from '../../src/optics/consistency.ts';
import type { Device, Lens } from '../../src/optics/device.ts';
import { defaultDevice, unknownSheet } from '../../src/plan/defaultDevice.ts';

/** A third-inch sensor of 4:3 (facts O2) with a picture of its shape. */
const third = (lens: Partial<Lens>): Device => ({
  ...defaultDevice,
  sensor: { width: 4.8, height: 3.6 },
  modes: defaultDevice.modes.map((mode) => ({ ...mode, frame: { width: 2560, height: 1920 } })),
  lens: { ...defaultDevice.lens, statedHfov: null, ...lens },
});

const fixed = (focal: number, hfov: number | null, vfov: number | null = null): Device =>
  third({
    shortest: focal,
    longest: focal,
    focalLength: focal,
    statedHfov: hfov === null ? null : { atShortest: hfov, atLongest: hfov },
    statedVfov: vfov === null ? null : { atShortest: vfov, atLongest: vfov },
  });

const said = (device: Device, rest = {}) =>
  sheetFaults({ device, sheet: unknownSheet, exposure: null, ...rest }, 'C1').map(
    ({ code, given, allowed }) => [code, given, allowed],
  );

describe('a data sheet held against itself', () => {
  // The installers' rule "2.8 mm is 90°, 4 is 60°, 6 is 45°, 12 is 25°" (common practice) on a width of 4.8 mm: two of the four
  // contradict it. Nearest focal lengths by hand: 2.4 / tan 30° = 4.157; 2.4 / sin 12.5° = 11.089.
  test.each([
    [2.8, 90, []],
    [4, 60, [['sheet.angle', '60° at 4 mm', '4.16 mm']]],
    [6, 45, []],
    [12, 25, [['sheet.angle', '25° at 12 mm', '11.09 mm']]],
  ])('%s mm with %s°', (focal, hfov, expected) => {
    expect(said(fixed(focal, hfov))).toEqual(expected);
  });

  test('a vertical angle may be a degree off what follows, and no more', () => {
    // 2 atan(3.6 / 5.6) = 65.47° (facts O5, third of an inch at 2.8 mm).
    expect(said(fixed(2.8, null, 66.4))).toEqual([]);
    expect(said(fixed(2.8, null, 66.5))).toEqual([['sheet.vertical', '66.5° at 2.8 mm', '65.5°']]);
  });

  test('a vertical angle follows from the horizontal one where that bends the lens', () => {
    // An equidistant lens of 2.75 mm: 4.8 mm across are 4.8 / 2.75 rad = 100.01°, and 3.6 mm down 75.0°, by hand.
    expect(said(fixed(2.75, 100.01, 75))).toEqual([]);
    expect(said(fixed(2.75, 100.01, 78))).toEqual([['sheet.vertical', '78° at 2.75 mm', '75.0°']]);
  });

  test('both ends of a varifocal lens are asked', () => {
    const zoom = third({
      shortest: 2.8,
      longest: 12,
      focalLength: 4,
      statedHfov: { atShortest: 90, atLongest: 25 },
    });
    expect(said(zoom)).toEqual([['sheet.angle', '25° at 12 mm', '11.09 mm']]);
  });

  test('a range or angles that run backwards are said the right way round', () => {
    const stated = { atShortest: 25, atLongest: 90 };
    expect(said(third({ shortest: 12, longest: 2.8, focalLength: 4 }))).toEqual([
      ['sheet.reversed', '12 to 2.8 mm', '2.8 to 12 mm'],
    ]);
    expect(said(third({ shortest: 2.8, longest: 12, focalLength: 4, statedHfov: stated }))).toEqual([
      ['sheet.angles', '25° at 2.8 mm, 90° at 12 mm', '90° at 2.8 mm, 25° at 12 mm'],
    ]);
  });

  test('a wide picture needs a wide part of the sensor', () => {
    const wide = fixed(2.8, null);
    const device = {
      ...wide,
      modes: wide.modes.map((one) => ({ ...one, frame: { width: 2560, height: 1440 } })),
    };
    // 16:9 across 4.8 mm is 2.7 mm high.
    expect(said(device)).toEqual([['sheet.shape', '2560 × 1440 pixels on 4.80 × 3.60 mm', '4.80 × 2.70 mm']]);
    const cut = device.modes.map((one) => ({ ...one, crop: { x: 0, y: 0.125, width: 1, height: 0.75 } }));
    expect(said({ ...device, modes: cut })).toEqual([]);
    const off = device.modes.map((one) => ({ ...one, crop: { x: 0, y: 0, width: 1, height: 0.75 } }));
    expect(said({ ...device, modes: off })).toEqual([['sheet.middle', '13 %', 'the middle']]);
  });

  test('the angles of a lens that are stated for a mode hold over its part of the sensor', () => {
    const { modes } = fixed(4, null);
    const half = modes.map((one) => ({
      ...one,
      frame: { width: 1280, height: 960 },
      crop: { x: 0.25, y: 0.25, width: 0.5, height: 0.5 },
    }));
    // 2 atan(1.2 / 4) = 33.40° across half the sensor, 2 atan(0.9 / 4) = 25.36° down (facts O5: a third at 8 mm).
    const device = { ...fixed(4, 33.4, 25.36), modes: half };
    expect(said({ ...device, lens: { ...device.lens, statedIn: 'main' } })).toEqual([]);
    expect(said(device)).not.toEqual([]);
  });

  test('no exposure is longer than the time between two pictures', () => {
    const sheet = { ...unknownSheet, imagesPerSecond: 25 };
    expect(said(fixed(2.8, null), { sheet, exposure: { day: 2, night: 40 } })).toEqual([]);
    expect(said(fixed(2.8, null), { sheet, exposure: { day: 2, night: 50 } })).toEqual([
      ['sheet.exposure', '50 ms', '40 ms, or 20 pictures a second'],
    ]);
  });
});
