/* Source: three-mesh-bvh 0.9.17 over three 0.187.0 (npm, both MIT), a general library for rays on triangle meshes; run here. */
import { BufferAttribute, BufferGeometry, FrontSide, Ray, Vector3 } from 'three';
import { MeshBVH, SAH } from 'three-mesh-bvh';
import type { Vec3 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';

export interface BoxTree {
  /** Distance to the nearest face met from outside, from `near` to `far` along the segment, and its triangle; null where the way is free. */
  first(
    from: Vec3,
    to: Vec3,
    slack?: number,
  ): { readonly distance: number; readonly triangle: number } | null;
}

/** All triangles of some solids under the library's tree, split by surface area; triangles keep the order of the solids. */
export function boxTreeOf(solids: readonly Solid[]): BoxTree {
  const corners = solids.flatMap(({ positions, triangles }) =>
    Array.from(triangles).flatMap((corner) => [0, 1, 2].map((axis) => positions[corner * 3 + axis] ?? 0)),
  );
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float64Array.from(corners), 3));
  // Indirect: faces are named by the order in which they were given.
  const tree = new MeshBVH(geometry, { strategy: SAH, indirect: true });
  const ray = new Ray();
  const end = new Vector3();
  return {
    first(from, to, slack = 0.001) {
      ray.origin.set(...from);
      ray.direction.copy(end.set(...to)).sub(ray.origin);
      const length = ray.direction.length();
      ray.direction.divideScalar(length);
      const hit = tree.raycastFirst(ray, FrontSide, slack, length - slack);
      return hit === null ? null : { distance: hit.distance, triangle: hit.faceIndex ?? -1 };
    },
  };
}
