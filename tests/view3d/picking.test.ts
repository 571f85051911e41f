import {
  BufferAttribute,
  BufferGeometry,
  FrontSide,
  Mesh,
  MeshBasicMaterial,
  Raycaster,
  Vector3,
} from 'three';
import { describe, expect, test } from 'vitest';
import { unit, type Vec3 } from '../../src/base/vector.ts';
import { pick, pickable } from '../../src/view3d/picking.ts';
import { chanceFrom } from '../house/seeded.ts';
import { box, prism } from './shapes.ts';

const solids = [
  box('low', [-3, -2, 0], [2, 2, 1]),
  box('tower', [4, -1, 0], [6, 1, 9]),
  prism('round', 24, 2.5, 4),
  box('thin', [-8, -5, 0], [8, -4.95, 2]),
];

describe('what a ray meets', () => {
  // Judge: three's Raycaster, which is general and tries every triangle.
  test('is the solid and the place that a general ray caster finds (seed 17)', () => {
    const meshes = solids.map((solid) => {
      const geometry = new BufferGeometry();
      geometry.setAttribute('position', new BufferAttribute(Float32Array.from(solid.positions), 3));
      geometry.setIndex(new BufferAttribute(solid.triangles, 1));
      const mesh = new Mesh(geometry, new MeshBasicMaterial({ side: FrontSide }));
      mesh.name = solid.id;
      return mesh;
    });
    const chance = chanceFrom(17);
    let hits = 0;
    for (let i = 0; i < 2000; i += 1) {
      const from: Vec3 = [chance.between(-20, 20), chance.between(-20, 20), chance.between(10, 20)];
      const to: Vec3 = [chance.between(-9, 9), chance.between(-6, 6), chance.between(0, 5)];
      const along = unit([to[0] - from[0], to[1] - from[1], to[2] - from[2]]);
      const [known] = new Raycaster(new Vector3(...from), new Vector3(...along)).intersectObjects(meshes);
      const found = pick(pickable(solids), { from, along });
      expect(found?.solid.id).toBe(known?.object.name);
      expect(Math.abs((found?.distance ?? 0) - (known?.distance ?? 0))).toBeLessThan(1e-4);
      expect(
        found ? found.normal[0] * along[0] + found.normal[1] * along[1] + found.normal[2] * along[2] : -1,
      ).toBeLessThan(0);
      if (known) hits += 1;
    }
    expect(hits).toBeGreaterThan(500);
  });

  test('nothing past a limit is met', () => {
    const ray = { from: [5, 0, 20], along: [0, 0, -1] } as const;
    expect(pick(pickable(solids), ray)?.distance).toBeCloseTo(11, 9);
    expect(pick(pickable(solids), ray, 10.9)).toBeNull();
  });

  test('nothing is met where there is nothing', () => {
    expect(pick(pickable([]), { from: [0, 0, 5], along: [0, 0, -1] })).toBeNull();
  });
});
