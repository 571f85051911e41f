import type { Solid } from '../../src/model/solid.ts';
import type { Triangles } from './bruteCaster.ts';

/** The bare triangles of solids that pass a test, as the brute caster takes them. */
export function rawTriangles(
  solids: readonly Solid[],
  taken: (solid: Solid) => boolean = () => true,
): Triangles {
  const kept = solids.filter(taken);
  return {
    corners: kept.flatMap(({ positions, triangles }) =>
      Array.from(triangles, (corner) => [0, 1, 2].map((axis) => positions[corner * 3 + axis] ?? 0)).flat(),
    ),
    owner: kept.flatMap(({ id, triangles }) => Array.from({ length: triangles.length / 3 }, () => id)),
  };
}
