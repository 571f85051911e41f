import type { Facets } from '../../sight/facets.ts';
import { GROUND } from '../../model/terrainSolid.ts';

/** Faces that turn by less than this are one face; by more, they meet in an edge that is drawn, °. */
const FLAT = Math.cos((1 * Math.PI) / 180);
const SHARP = Math.cos((20 * Math.PI) / 180);

/** The edges of a scene's solids that can be drawn. */
export interface SolidEdges {
  readonly count: number;
  /** Six numbers an edge: its ends, site frame. */
  readonly ends: Float64Array;
  /** Two facets an edge. */
  readonly sides: Int32Array;
  readonly solid: Int32Array;
  /** 1 where it is drawn although both its faces are seen. */
  readonly sharp: Uint8Array;
}

/** Each edge once at which two faces of a solid meet at more than a degree. Cost: linear in facets. */
export function solidEdges({ count, corners, normals, neighbours, solid, solids }: Facets): SolidEdges {
  const ends: number[] = [];
  const sides: number[] = [];
  const owner: number[] = [];
  const sharp: number[] = [];
  for (let facet = 0; facet < count; facet += 1) {
    const own = solid[facet] ?? 0;
    const isGround = solids[own]?.id === GROUND;
    for (let k = 0; k < 3; k += 1) {
      const other = neighbours[facet * 3 + k] ?? -1;
      if (other <= facet) continue;
      const turn = cosine(normals, facet, other);
      if (turn > FLAT) continue;
      const next = (k + 1) % 3;
      for (const corner of [k, next])
        for (let axis = 0; axis < 3; axis += 1) ends.push(corners[facet * 9 + corner * 3 + axis] ?? 0);
      sides.push(facet, other);
      owner.push(own);
      sharp.push(turn < SHARP && !isGround ? 1 : 0);
    }
  }
  return {
    count: owner.length,
    ends: Float64Array.from(ends),
    sides: Int32Array.from(sides),
    solid: Int32Array.from(owner),
    sharp: Uint8Array.from(sharp),
  };
}

function cosine(normals: Float64Array, a: number, b: number): number {
  const n = (facet: number, axis: number) => normals[facet * 3 + axis] ?? 0;
  const along = n(a, 0) * n(b, 0) + n(a, 1) * n(b, 1) + n(a, 2) * n(b, 2);
  const size = Math.hypot(n(a, 0), n(a, 1), n(a, 2)) * Math.hypot(n(b, 0), n(b, 1), n(b, 2));
  // A facet without area has no side of its own.
  return size > 0 ? along / size : 1;
}
