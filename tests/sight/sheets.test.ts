import { expect, test } from 'vitest';
import { horizontalPlane } from '../../src/base/plane.ts';
import type { Solid } from '../../src/model/solid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { boxSolid } from './boxSolid.ts';
import { wideCamera } from './wideCamera.ts';

const WINDOW = [
  [-20, -20],
  [20, -20],
  [20, 20],
  [-20, 20],
] as const;

test('mesh that turns a corner has two sheets, each with all of its own shadows', () => {
  const along = boxSolid('mesh', [0, 5, 0], [6, 0.04, 1.5], 0, 'screen');
  const away = boxSolid('mesh', [3, 8, 0], [0.04, 6, 1.5], 0, 'screen');
  const sides = [
    ...Array.from({ length: 12 }, () => [0, 1, 0]),
    // Which way round a sheet's normal points says nothing.
    ...Array.from({ length: 12 }, (_, facet) => [facet % 2 === 0 ? 1 : -1, 0, 0]),
  ];
  const mesh: Solid = {
    ...along,
    positions: Float64Array.of(...along.positions, ...away.positions),
    triangles: Uint32Array.of(...along.triangles, ...away.triangles.map((corner) => corner + 8)),
    sheets: Float64Array.from(sides.flat()),
  };
  const { sheets, screens } = sightOf(
    { ...wideCamera, eye: [0, 0, 3], pan: 0, tilt: 20 },
    horizontalPlane(0),
    WINDOW,
    facetsOf([mesh]),
  );
  expect(sheets.map(({ solid, normal }) => [solid, ...normal.map(Math.abs)])).toEqual([
    [0, 0, 1, 0],
    [0, 1, 0, 0],
  ]);
  expect(sheets.reduce((sum, { shadows }) => sum + shadows.count, 0)).toBe(screens.count);
  for (const { shadows } of sheets) expect(shadows.count).toBeGreaterThan(1);
});
