import { expect, test } from 'vitest';
import { horizontalPlane, type Plane } from '../../src/base/plane.ts';
import { cross, dot, subtract, type Vec3 } from '../../src/base/vector.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { DEPTH, STRIDE } from '../../src/sight/shadows.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { ballSolid } from '../bench/shapes.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { boxSolid } from './boxSolid.ts';
import { wideCamera } from './wideCamera.ts';

const WINDOW = [
  [-20, -20],
  [20, -20],
  [20, 20],
  [-20, 20],
] as const;
const [c, s] = [Math.cos(0.4), Math.sin(0.4)];
const planes: readonly Plane[] = [
  horizontalPlane(0),
  // A wall that looks south-west, and a roof of 35°.
  { origin: [0, 9, 1], u: [c, -s, 0], v: [0, 0, 1], normal: [-s, -c, 0] },
  {
    origin: [0, 6, 0],
    u: [1, 0, 0],
    v: [0, Math.cos(0.61), Math.sin(0.61)],
    normal: [0, -Math.sin(0.61), Math.cos(0.61)],
  },
];

test('the depth of a shadow is how many times as far as its face the target lies, on ground, wall and roof', () => {
  const chance = chanceFrom(95);
  for (const plane of planes) {
    let asked = 0;
    for (let trial = 0; trial < trials(6, 200); trial += 1) {
      const lump = ballSolid('lump', [chance.between(-2, 2), 1, chance.between(1, 2)], 1, {
        meridians: 7,
        bands: 5,
        bump: 0.1,
      });
      const facets = facetsOf([
        lump,
        boxSolid('box', [chance.between(-4, 4), 2, 0], [1, 1, 2], chance.between(0, 90)),
      ]);
      const eye: Vec3 = [chance.between(-3, 3), chance.between(-9, -6), chance.between(3, 7)];
      const { solids, footing } = sightOf({ ...wideCamera, eye, pan: 0, tilt: 20 }, plane, WINDOW, facets);
      for (let shadow = 0; shadow < solids.count; shadow += 1) {
        const facet = solids.facet[shadow] ?? 0;
        const corner = (k: number): Vec3 => {
          const [x = 0, y = 0, z = 0] = facets.corners.subarray(facet * 9 + k * 3, facet * 9 + k * 3 + 3);
          return [x, y, z];
        };
        const normal = cross(subtract(corner(1), corner(0)), subtract(corner(2), corner(0)));
        const [p, q] = [chance.between(-9, 9), chance.between(-9, 9)];
        const at = (axis: 0 | 1 | 2) =>
          plane.origin[axis] + (footing.foot[0] + p) * plane.u[axis] + (footing.foot[1] + q) * plane.v[axis];
        // Where the ray to the target meets the plane of the face, as a share of the way.
        const way = subtract([at(0), at(1), at(2)], eye);
        const share = dot(normal, subtract(corner(0), eye)) / dot(normal, way);
        const depth = shadow * STRIDE + DEPTH;
        const n = (k: number) => solids.numbers[depth + k] ?? NaN;
        expect((n(0) * p + n(1) * q + n(2)) * share).toBeCloseTo(1, 8);
        asked += 1;
      }
    }
    expect(asked).toBeGreaterThan(50);
  }
});
