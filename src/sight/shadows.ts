import type { Passage } from '../model/passage.ts';
import { MOST_CORNERS } from './faces.ts';
import type { Facets } from './facets.ts';
import type { Footing } from './footing.ts';
import type { HalfPlanes } from './halfPlanes.ts';
import { Pyramid } from './pyramid.ts';
import { ShadowMaker } from './shadowMaker.ts';

/** Most half-planes that one shadow can have: its edges, the cut at the target, the cut at the lens. */
const MOST_SIDES = MOST_CORNERS + 2;
/** Numbers a shadow: its half-planes, then depth s = a·p + b·q + k, then its box: least p, q, greatest p, q. */
export const STRIDE = MOST_SIDES * 3 + 7;
export const DEPTH = MOST_SIDES * 3;
export const BOX = DEPTH + 3;

/**
 * What front faces throw on a plane. Shadow i holds the targets p, q for which all of its half-planes are ≥ 0; there
 * its face stands 1/s of the way from lens to target, so the largest s is nearest the lens.
 */
export interface Shadows {
  readonly count: number;
  readonly numbers: Float64Array;
  /** Half-planes of each shadow. */
  readonly sides: Uint8Array;
  /** Bit j: side j can be an outline, since no front face of the same solid goes on beyond it. */
  readonly outline: Uint8Array;
  /** Index of the solid, and of the first facet of the face that throws it; −1 where none does. */
  readonly solid: Int32Array;
  readonly facet: Int32Array;
}

/**
 * The shadows of the faces of one passage, within a window.
 * @param window half-planes relative to the foot; a face wholly outside one of them is left out
 * @param reach  greatest distance from the lens to a target in the window, m
 * Source: DEVELOPERS.md, "Shadows": half-planes E = σ·Q × Q' through the lens, affine on the plane.
 */
export function shadowsOf(
  facets: Facets,
  footing: Footing,
  window: HalfPlanes,
  reach: number,
  passage: Passage,
): Shadows {
  const { faces, groups } = facets;
  const pyramid = new Pyramid(footing, window);
  const made = new ShadowMaker(faces, footing, pyramid, reach);
  for (let at = 0; at < groups.length; at += 1) {
    const group = groups[at];
    if (group?.passage !== passage || pyramid.misses(group.box, 0)) continue;
    const end = faces.starts[at + 1] ?? 0;
    for (let face = faces.starts[at] ?? 0; face < end; face += 1) made.add(face, group.solid);
  }
  return made.shadows();
}
