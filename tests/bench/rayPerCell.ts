/* The reference: one ray a cell by the ecosystem's usual tree of boxes, three-mesh-bvh 0.9.17 over three 0.187.0 (MIT). */
import { BufferAttribute, BufferGeometry, FrontSide, Ray, Vector3 } from 'three';
import { MeshBVH, SAH } from 'three-mesh-bvh';
import type { Vec3 } from '../../src/base/vector.ts';
import type { Solid } from '../../src/model/solid.ts';

const SLACK = 0.001;

/** Marks each target 1 that a solid hides: nearest hit, faces from outside, single-precision corners as three keeps them. */
export type Cast = (eye: Vec3, targets: Float64Array, hidden: Uint8Array) => void;

export function rayPerCell(solids: readonly Solid[]): Cast {
  const corners = solids.flatMap(({ positions, triangles }) =>
    Array.from(triangles).flatMap((corner) => [0, 1, 2].map((axis) => positions[corner * 3 + axis] ?? 0)),
  );
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(corners), 3));
  const tree = new MeshBVH(geometry, { strategy: SAH });
  const ray = new Ray();
  const target = new Vector3();
  return (eye, targets, hidden) => {
    for (let cell = 0; cell < hidden.length; cell += 1) {
      target.set(targets[cell * 3] ?? 0, targets[cell * 3 + 1] ?? 0, targets[cell * 3 + 2] ?? 0);
      ray.origin.set(eye[0], eye[1], eye[2]);
      ray.direction.subVectors(target, ray.origin);
      const length = ray.direction.length();
      ray.direction.divideScalar(length);
      hidden[cell] = tree.raycastFirst(ray, FrontSide, SLACK, length - SLACK) === null ? 0 : 1;
    }
  };
}
