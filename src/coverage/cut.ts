import type { Vec2 } from '../base/vector.ts';
import type { Area } from './area.ts';
import { sliceAt } from '../model/slice.ts';
import type { Solid } from '../model/solid.ts';
import { areaShadows } from '../sight/areaShadows.ts';
import { halfPlanesOf } from '../sight/halfPlanes.ts';
import { shareOut } from '../sight/owners.ts';
import { chain } from '../sight/rings.ts';
import type { Plane } from '../base/plane.ts';
import type { Window } from '../sight/sight.ts';
import { boundsOf } from '../sight/sightOf.ts';
import { trianglesOf } from '../sight/triangulate.ts';

/**
 * What of a plane lies inside solids, as triangles in its coordinates: six numbers each; those of different solids may
 * overlap.
 * @param above how far above the plane it is cut, m: for a plane that is a face of a solid
 * @param most  triangles at most
 * @returns null where there are more, or where the cut of a solid does not close, so that only cells can tell
 */
export function cutTriangles(
  solids: readonly Solid[],
  plane: Plane,
  above: number,
  most: number,
): Float64Array | null {
  const triangles: number[] = [];
  for (const solid of solids) {
    const segments = sliceAt(solid, plane, above);
    const pieces = Array.from({ length: segments.length / 4 }, (_, at) => {
      const n = (k: number) => segments[at * 4 + k] ?? 0;
      return { from: [n(0), n(1)] as Vec2, to: [n(2), n(3)] as Vec2, beyond: 0 };
    });
    const { rings, closed } = chain(pieces);
    if (!closed) return null;
    if (triangles.length > most * 6) return null;
    for (const number of trianglesOf(rings)) triangles.push(number);
  }
  return Float64Array.from(triangles);
}

/** The area of convex parts of the plane that triangles cover, overlaps once. */
export function cutArea(triangles: Float64Array, parts: readonly Window[]): Area {
  const shadows = areaShadows(triangles, [0, 0], 0);
  const rank = new Uint8Array(shadows.count);
  const value = parts.reduce((sum, part) => {
    const bounds = boundsOf(part, [], halfPlanesOf(part));
    return sum + (shareOut(shadows, shadows.solid, rank, bounds).areas.get(0) ?? 0);
  }, 0);
  return { value: Math.max(0, value), bound: 0, how: 'exact' };
}
