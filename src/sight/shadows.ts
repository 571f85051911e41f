import type { Passage } from '../model/passage.ts';
import type { Facets } from './facets.ts';
import type { Footing } from './footing.ts';
import type { HalfPlanes } from './halfPlanes.ts';
import { Pyramid } from './pyramid.ts';
import type { Shadows } from './shadowLayout.ts';
import { ShadowMaker } from './shadowMaker.ts';

export { BOX, DEPTH, STRIDE, type Shadows } from './shadowLayout.ts';

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
