/*
 * Source: ρ/f = tan θ, 2 tan(θ/2), θ, 2 sin(θ/2), sin θ, and radial and tangential stretch (there: meridional and sagittal
 * scaling) of each, from an optics glossary's page on fisheye projections and a wiki page of a panorama tool, "General
 * lens model" (excerpts read). Numbers at 30 to 90° and at 60° computed from those forms. No licence: formulae and numbers.
 */
import { describe, expect, test } from 'vitest';
import { densityAt } from '../../../src/optics/density.ts';
import { angleOfRadius, radius } from '../../../src/optics/lens.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';

const ANGLES = [30, 45, 60, 75, 90] as const;
const LENSES = [
  { name: 'rectilinear', k: 1, radii: [0.57735, 1, 1.732051, 3.732051, null], stretch: [4, 2] },
  {
    name: 'stereographic',
    k: 0.5,
    radii: [0.535898, 0.828427, 1.154701, 1.534654, 2],
    stretch: [1.333333, 1.333333],
  },
  {
    name: 'equidistant',
    k: 0,
    radii: [0.523599, 0.785398, 1.047198, 1.308997, 1.570796],
    stretch: [1, 1.2092],
  },
  {
    name: 'equisolid-angle',
    k: -0.5,
    radii: [0.517638, 0.765367, 1, 1.217523, 1.414214],
    stretch: [0.866025, 1.154701],
  },
  { name: 'orthographic', k: -1, radii: [0.5, 0.707107, 0.866025, 0.965926, 1], stretch: [0.5, 1] },
] as const;

const HALF_DIGIT = 5.01e-7;

/**
 * Radial and tangential stretch, (dρ/dθ)/f and (ρ/sin θ)/f, as the density of a target 1 m off, `angle` to the right of a
 * level axis: there the horizontal square to the bearing is radial, the vertical tangential. 1000 mm at a pixel a millimetre.
 */
function stretchAt(k: number, angle: number): readonly [radial: number, tangential: number] {
  const camera = cameraWith({
    k,
    eye: [0, 0, 0],
    focalLength: 1000,
    sensor: { width: 100, height: 100 },
    frame: { width: 100, height: 100 },
  });
  const rad = (angle * Math.PI) / 180;
  const found = densityAt(camera, [Math.sin(rad), Math.cos(rad), 0]);
  return [(found?.horizontal ?? Number.NaN) / 1000, (found?.vertical ?? Number.NaN) / 1000];
}

describe.each(LENSES)('the $name lens', ({ k, radii, stretch }) => {
  test('has the radii of its closed form, and no image where that has none', () => {
    ANGLES.forEach((angle, at) => {
      const wanted = radii[at] ?? null;
      const found = radius(1, k, angle);
      expect(found === null).toBe(wanted === null);
      expect(Math.abs((found ?? 0) - (wanted ?? 0)), `${angle}°`).toBeLessThan(HALF_DIGIT);
    });
  });

  test('finds the angles back from the printed radii', () => {
    // At 90° the orthographic radius stands still: six digits tell the angle to a tenth of a degree.
    ANGLES.forEach((angle, at) => {
      const mm = radii[at] ?? null;
      if (mm === null) return;
      const slack = angle === 90 && k === -1 ? 0.1 : 2e-4;
      expect(Math.abs((angleOfRadius(1, k, mm) ?? Infinity) - angle), `${angle}°`).toBeLessThan(slack);
    });
  });

  test('stretches at 60° as published', () => {
    stretchAt(k, 60).forEach((found, way) =>
      expect(Math.abs(found - (stretch[way] ?? 0))).toBeLessThan(HALF_DIGIT),
    );
  });
});

describe('stretch at any angle', () => {
  const angles = (seed: number): readonly number[] => {
    const chance = chanceFrom(seed);
    return Array.from({ length: trials(200, 5000) }, () => chance.between(0.01, 89.9));
  };

  test('of a stereographic lens is equal along and across the radius', () => {
    for (const angle of angles(81)) {
      const [radial, tangential] = stretchAt(0.5, angle);
      expect(Math.abs(radial / tangential - 1), `${angle}°`).toBeLessThan(1e-12);
    }
  });

  test('of an equisolid-angle lens has the product 1', () => {
    for (const angle of angles(82)) {
      const [radial, tangential] = stretchAt(-0.5, angle);
      expect(Math.abs(radial * tangential - 1), `${angle}°`).toBeLessThan(1e-12);
    }
  });

  test('of the others is the published form', () => {
    for (const angle of angles(83)) {
      const rad = (angle * Math.PI) / 180;
      const forms = [
        [1, 1 / Math.cos(rad) ** 2, 1 / Math.cos(rad)],
        [0, 1, rad / Math.sin(rad)],
        [-1, Math.cos(rad), 1],
      ] as const;
      for (const [k, ...wanted] of forms)
        stretchAt(k, angle).forEach((found, way) =>
          expect(Math.abs(found / (wanted[way] ?? 0) - 1), `${angle}°, k ${k}`).toBeLessThan(1e-11),
        );
    }
  });
});
