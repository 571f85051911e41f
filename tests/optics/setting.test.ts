import { describe, expect, test } from 'vitest';
import type { Device, Lens } from '../../src/optics/device.ts';
import { angleOfView, solveK } from '../../src/optics/lens.ts';
import { anglesOf, lawOf, settingOf } from '../../src/optics/setting.ts';

const VARIFOCAL: Lens = {
  shortest: 2.8,
  longest: 12,
  focalLength: 2.8,
  statedHfov: { atShortest: 100, atLongest: 25.5 },
  statedVfov: null,
  statedIn: null,
  fNumber: 1.4,
};

const device = (lens: Partial<Lens> = {}): Device => ({
  sensor: { width: 5.37, height: 3.04 },
  modes: [
    {
      id: 'small',
      name: 'Small',
      frame: { width: 704, height: 480 },
      crop: { x: 0, y: 0, width: 1, height: 1 },
      cropKnown: true,
      use: 'recorded',
    },
    {
      id: 'steady',
      name: 'Stabilised',
      frame: { width: 1920, height: 1080 },
      crop: { x: 0.1, y: 0.05, width: 0.8, height: 0.9 },
      cropKnown: true,
      use: 'recorded',
    },
  ],
  recorded: 'steady',
  lens: { ...VARIFOCAL, ...lens },
});

describe('the setting of a device', () => {
  test('takes crop and pixels of the recorded picture', () => {
    const { setting } = settingOf(device(), 'C1');
    expect(setting.sensor.width).toBeCloseTo(5.37 * 0.8, 12);
    expect(setting.sensor.height).toBeCloseTo(3.04 * 0.9, 12);
    expect(setting.frame).toEqual({ width: 1920, height: 1080 });
    expect(settingOf({ ...device(), recorded: 'small' }, 'C1').setting.frame).toEqual({
      width: 704,
      height: 480,
    });
  });

  test('reads the stated angle over the full sensor, though the recorded picture is a part of it', () => {
    const { setting, faults } = settingOf(device(), 'C1');
    expect(faults).toEqual([]);
    expect(angleOfView(2.8, setting.k, 5.37)).toBeCloseTo(100, 8);
    expect(anglesOf(setting).horizontal).toBeLessThan(90);
  });

  test('of an unknown picture is a bug that names those there are', () => {
    expect(() => settingOf({ ...device(), recorded: 'x' }, 'C1')).toThrow('small, steady');
  });

  test('gives both angles of view by its law; none where the law ends inside the sensor', () => {
    const flat = {
      sensor: { width: 4.8, height: 2.7 },
      frame: { width: 1, height: 1 },
      focalLength: 2.4,
      k: 1,
    };
    expect(anglesOf(flat).horizontal).toBeCloseTo(90, 12);
    expect(anglesOf(flat).vertical).toBeCloseTo((2 * Math.atan(1.35 / 2.4) * 180) / Math.PI, 12);
    const round = anglesOf({ ...flat, focalLength: 2, k: -1 });
    expect(round.horizontal).toBe(null);
    expect(round.vertical).toBeCloseTo((2 * Math.asin(0.675) * 180) / Math.PI, 12);
  });
});

describe('the law of a lens', () => {
  test('is rectilinear where the sheet states no angle', () => {
    expect(lawOf({ ...VARIFOCAL, statedHfov: null }, 5.37, 'C1')).toEqual({ k: 1, faults: [] });
  });

  test('given itself asks no angle', () => {
    expect(lawOf({ ...VARIFOCAL, law: -0.3 }, 5.37, 'C1')).toEqual({ k: -0.3, faults: [] });
    expect(lawOf({ ...VARIFOCAL, law: 0 }, 5.37, 'C1').k).toBe(0);
  });

  test('of a varifocal lens goes in proportion to focal length from end to end', () => {
    const width = 5.37;
    const [near, far] = [solveK(2.8, 100, width).k, solveK(12, 25.5, width).k];
    expect(Math.abs(near - far)).toBeGreaterThan(0.01);
    const at = (focalLength: number) => lawOf({ ...VARIFOCAL, focalLength }, width, 'C1').k;
    expect(at(2.8)).toBeCloseTo(near, 12);
    expect(at(12)).toBeCloseTo(far, 12);
    expect(at(2.8 + 9.2 / 4)).toBeCloseTo(near + (far - near) / 4, 12);
    expect([at(2), at(20)]).toEqual([at(2.8), at(12)]);
  });

  test('of a fixed lens asks its one end', () => {
    const fixed = { ...VARIFOCAL, longest: 2.8, statedHfov: { atShortest: 100, atLongest: 100 } };
    expect(lawOf(fixed, 5.37, 'C1').k).toBe(solveK(2.8, 100, 5.37).k);
  });

  test('that no sheet can have is a fault for each such end, with the focal length that would do', () => {
    const odd = { ...VARIFOCAL, statedHfov: { atShortest: 60, atLongest: 60 } };
    const { faults } = lawOf(odd, 5.37, 'Door');
    expect(faults.map(({ code, subject, path }) => [code, subject, path])).toEqual([
      ['lens.inconsistent', 'Door', ['statedHfov']],
      ['lens.inconsistent', 'Door', ['statedHfov']],
    ]);
    // 2.685 / tan 30° and 2.685 / sin 30°.
    expect(faults.map(({ allowed }) => allowed)).toEqual(['4.65 mm', '5.37 mm']);
    expect(faults[0]?.given).toContain('2.8 mm');
    expect(faults[1]?.given).toContain('12 mm');
  });
});
