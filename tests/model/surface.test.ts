import { describe, expect, test } from 'vitest';
import { dot, subtract } from '../../src/base/vector.ts';
import { signedArea } from '../../src/model/ring.ts';
import { solidsOf } from '../../src/model/solids.ts';
import { patchSurface, planeFacing, roofSurfaces, wallSurfaces } from '../../src/model/surface.ts';
import type { FlatSurface } from '../../src/model/surface.ts';
import { barrierWith, buildingWith } from './sampleStructures.ts';

const area = ({ rings }: FlatSurface): number => rings.reduce((sum, ring) => sum + signedArea(ring), 0);

const gabled = buildingWith({
  outline: [
    [0, 0],
    [10, 0],
    [10, 6],
    [0, 6],
  ],
  base: 0,
  height: 3,
  roof: { kind: 'gable', pitch: 45, overhang: 0, ridge: 90, parapet: 0 },
});

describe('the faces of a building as surfaces', () => {
  test('walls have their area, gables the triangle under the ridge too', () => {
    const walls = wallSurfaces(gabled);
    // 10 × 3; 6 × 3 and a triangle 6 wide and 3 high.
    expect(walls.map(area)).toEqual([30, 27, 30, 27].map((m2): unknown => expect.closeTo(m2, 9)));
    expect(walls.map(({ name }) => name)).toEqual(['South wall', 'East wall', 'North wall', 'West wall']);
  });

  test('the slopes of a roof have their area along the slope', () => {
    const roof = roofSurfaces(gabled, solidsOf(gabled).solids);
    // Each 10 m long and 3 m ÷ cos 45° up the slope.
    expect(roof.map(area)).toEqual([expect.closeTo(30 * Math.SQRT2, 9), expect.closeTo(30 * Math.SQRT2, 9)]);
    expect(roof.map(({ name }) => name).sort()).toEqual(['North roof slope', 'South roof slope']);
    for (const { plane } of roof) expect(plane.normal[2]).toBeCloseTo(Math.SQRT1_2, 12);
  });

  test('sills and steps are no roof', () => {
    const window = { id: 'w', name: 'W', kind: 'window', face: 0, along: 2, width: 1, height: 1 } as const;
    const recess = {
      ...window,
      sill: 1,
      setBack: 0.1,
      leaf: 'closed',
      passage: 'solid',
      got: 'measured',
    } as const;
    const withSill = { ...gabled, openings: [recess] };
    expect(roofSurfaces(withSill, solidsOf(withSill).solids)).toHaveLength(2);
  });

  test('both sides of a fence look outward, and their rings turn counter-clockwise as seen from there', () => {
    const fence = barrierWith({
      line: [
        [0, 0],
        [4, 3],
      ],
      closed: false,
      height: 2,
      thickness: 0.1,
    });
    const sides = wallSurfaces(fence);
    expect(sides).toHaveLength(2);
    for (const side of sides) {
      expect(area(side)).toBeCloseTo(10, 9);
      // The middle of the fence lies behind either side.
      expect(dot(side.plane.normal, subtract([2, 1.5, 1], side.plane.origin))).toBeCloseTo(-0.05, 9);
    }
  });
});

describe('a patch', () => {
  const outline = [
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ] as const;

  test('rises towards its bearing by its pitch, from the height of its first corner', () => {
    const { plane, rings } = patchSurface({ id: 'p', name: 'P', outline, base: 1, pitch: 30, rises: 90 });
    const heights = rings[0]?.map(([a, b]) => plane.origin[2] + a * plane.u[2] + b * plane.v[2]);
    const rise = 4 * Math.tan(Math.PI / 6);
    expect(heights).toEqual([1, 1 + rise, 1 + rise, 1].map((z): unknown => expect.closeTo(z, 9)));
    expect(signedArea(rings[0] ?? [])).toBeCloseTo(12 / Math.cos(Math.PI / 6), 9);
  });

  test('drawn clockwise it is the same patch', () => {
    const { rings } = patchSurface({
      id: 'p',
      name: 'P',
      outline: outline.toReversed(),
      base: 0,
      pitch: 10,
      rises: 200,
    });
    expect(signedArea(rings[0] ?? [])).toBeGreaterThan(12);
  });
});

test('a plane has u level, v up the face, and its normal as given', () => {
  const plane = planeFacing([1, 2, 3], [3, -4, 2]);
  expect(plane.u[2]).toBe(0);
  expect(plane.v[2]).toBeGreaterThan(0);
  expect(dot(plane.u, plane.v)).toBeCloseTo(0, 12);
  expect(plane.normal[0] / plane.normal[1]).toBeCloseTo(-0.75, 12);
});
