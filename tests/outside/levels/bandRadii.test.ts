/*
 * Source of the levels: public catalogue entries of two national standards bodies for the draft and the final draft of
 * IEC 62676-4:2025 (list of changes, excerpts read): the 2014 edition has 12.5, 25, 62.5, 125, 250, 1000 px/m, the 2025
 * edition 20, 40, 80, 125, 250, 500, 1500. The standard itself was not read. Names of 2014: a public explanatory page
 * (excerpt); of 2025: from memory. Distances: computed from the pinhole model, N / (2 d tan(HFOV/2)) = N f / (w d).
 */
import { describe, expect, test } from 'vitest';
import { BandRule } from '../../../src/coverage/rule.ts';
import { reachOf } from '../../../src/coverage/reach.ts';
import type { Camera } from '../../../src/optics/camera.ts';
import { densityAt } from '../../../src/optics/density.ts';
import { editionOf } from '../../../src/plan/editions.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { horizontalPlane } from '../../../src/base/plane.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';

describe('the levels of the editions', () => {
  const levels = (key: string) =>
    editionOf(key).bands.map(({ name, density }) => [name.toLowerCase(), density]);

  test('of 2014: four of its six, monitor at 12.5 and inspect at 1000 px/m left out', () => {
    expect(levels('iec-62676-4-2014')).toEqual([
      ['detect', 25],
      ['observe', 62.5],
      ['recognise', 125],
      ['identify', 250],
    ]);
  });

  test('of 2025: all seven', () => {
    expect(levels('iec-62676-4-2025')).toEqual([
      ['overview', 20],
      ['outline', 40],
      ['discern', 80],
      ['perceive', 125],
      ['characterise', 250],
      ['validate', 500],
      ['scrutinise', 1500],
    ]);
  });
});

/** A level camera 2560 px wide, targets at the height of its lens. */
const level = (focalLength: number, width: number): Camera =>
  cameraWith({
    eye: [0, 0, 1.6],
    focalLength,
    sensor: { width, height: (width * 9) / 16 },
    frame: { width: 2560, height: 1440 },
    range: 1000,
  });

/** The distances to which each band reaches along the axis. */
function radii(camera: Camera): readonly (number | null)[] {
  const { bands } = editionOf('iec-62676-4-2014');
  const rule = new BandRule(bands, [], camera.range);
  return reachOf(camera, horizontalPlane(1.6), facetsOf([]), rule, bands.length, false).byBand;
}

const HALF_MILLIMETRE = 5.01e-4;

describe('distances at which a target faces the camera on its axis with just so many px/m', () => {
  const byAngle = [
    { hfov: 90, at: [5.12, 10.24, 20.48, 51.2, 102.4] },
    { hfov: 60, at: [8.868, 17.736, 35.472, 88.681, 177.362] },
    { hfov: 45, at: [12.361, 24.722, 49.443, 123.608, 247.215] },
    { hfov: 25, at: [23.095, 46.19, 92.379, 230.948, 461.897] },
  ] as const;
  test.each(byAngle)('2560 px over $hfov°', ({ hfov, at }) => {
    const camera = level(4, 8 * Math.tan((hfov * Math.PI) / 360));
    [250, 125, 62.5, 25, 12.5].forEach((density, index) => {
      const far = at[index] ?? 0;
      const found = densityAt(camera, [0, far, 1.6])?.horizontal ?? 0;
      expect(Math.abs((found / density) * far - far), `${density} px/m`).toBeLessThan(HALF_MILLIMETRE);
    });
    radii(camera).forEach((found, band) => {
      expect(Math.abs((found ?? 0) - (at[3 - band] ?? 0)), `band ${band}`).toBeLessThan(HALF_MILLIMETRE);
    });
  });

  const byFocalLength = [
    { focalLength: 2.8, at: [59.733, 23.893, 11.947, 5.973] },
    { focalLength: 4, at: [85.333, 34.133, 17.067, 8.533] },
    { focalLength: 6, at: [128, 51.2, 25.6, 12.8] },
    { focalLength: 12, at: [256, 102.4, 51.2, 25.6] },
  ] as const;
  test.each(byFocalLength)('2560 px on 4.8 mm behind $focalLength mm', ({ focalLength, at }) => {
    const camera = level(focalLength, 4.8);
    [25, 62.5, 125, 250].forEach((density, band) => {
      const far = at[band] ?? 0;
      const found = densityAt(camera, [0, far, 1.6])?.horizontal ?? 0;
      expect(Math.abs((found / density) * far - far), `${density} px/m`).toBeLessThan(HALF_MILLIMETRE);
    });
    radii(camera).forEach((found, band) => {
      expect(Math.abs((found ?? 0) - (at[band] ?? 0)), `band ${band}`).toBeLessThan(HALF_MILLIMETRE);
    });
  });
});
