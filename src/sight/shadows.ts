import type { Passage } from '../model/passage.ts';
import type { Facets } from './facets.ts';
import type { Footing } from './footing.ts';
import type { HalfPlanes } from './halfPlanes.ts';
import { touchedSolids } from './lensInside.ts';
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
  const { boxes, starts } = faces;
  const pyramid = new Pyramid(footing, window);
  const within = new Int32Array(groups.length);
  const touched = touchedSolids(footing.eye, facets);
  let kept = 0;
  let room = 0;
  for (let at = 0; at < groups.length; at += 1) {
    if (pyramid.misses(boxes, at * 6)) continue;
    if (groups[at]?.passage !== passage) continue;
    within[kept++] = at;
    room += (starts[at + 1] ?? 0) - (starts[at] ?? 0);
  }
  // About half of the faces turn away.
  const made = new ShadowMaker(faces, footing, pyramid, reach, Math.min(MOST_ROOM, room >> 1));
  for (let one = 0; one < kept; one += 1) {
    const at = within[one] ?? 0;
    pyramid.misses(boxes, at * 6);
    const solid = groups[at]?.solid ?? -1;
    made.add(starts[at] ?? 0, starts[at + 1] ?? 0, solid, touched?.[solid] === 1);
  }
  return made.shadows();
}

/** Shadows that room is made for at once; more make it grow. */
const MOST_ROOM = 4096;
