import type { Passage } from '../model/passage.ts';
import type { Clumps } from './clumps.ts';
import type { Facets } from './facets.ts';
import type { Footing } from './footing.ts';
import type { HalfPlanes } from './halfPlanes.ts';
import { touchedSolids } from './lensInside.ts';
import { nearestFirst } from './nearestFirst.ts';
import { Pyramid } from './pyramid.ts';
import { NO_SHADOWS, type Shadows } from './shadowLayout.ts';
import { ShadowMaker } from './shadowMaker.ts';

export { BOX, DEPTH, NO_SHADOWS, STRIDE, type Shadows } from './shadowLayout.ts';

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
  if (!groups.some((one) => one.passage === passage)) return NO_SHADOWS;
  const { starts, boxes, group } = faces.clumps;
  const pyramid = new Pyramid(footing, window);
  const framed = clumpsIn(faces.clumps, pyramid).filter(
    (clump) => groups[group[clump] ?? 0]?.passage === passage,
  );
  let room = 0;
  for (const clump of framed) room += (starts[clump + 1] ?? 0) - (starts[clump] ?? 0);
  // About half of the faces turn away.
  const made = new ShadowMaker(faces, footing, pyramid, reach, Math.min(MOST_ROOM, room >> 1));
  const touched = touchedSolids(footing.eye, facets);
  const add = (clump: number): void => {
    const solid = groups[group[clump] ?? 0]?.solid ?? -1;
    pyramid.misses(boxes, clump * 6);
    made.add(starts[clump] ?? 0, starts[clump + 1] ?? 0, solid, touched?.[solid] === 1);
  };
  // Not for screens: of these one behind another may close up first.
  if (passage === 'solid' && framed.length > 1 && room <= MOST_FACES)
    return nearestFirst(faces, footing, reach, framed, made, add);
  for (const clump of framed) add(clump);
  return made.shadows();
}

/** The clumps that a pyramid does not miss, in their order. */
function clumpsIn({ boxes, tree }: Clumps, pyramid: Pyramid): Int32Array {
  const found: number[] = [];
  const open = boxes.length === 0 ? [] : [0];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (pyramid.misses(tree.boxes, node * 6)) continue;
    const first = tree.first[node] ?? 0;
    const amount = tree.amount[node] ?? 0;
    if (amount === 0) open.push(first, first + 1);
    for (let at = first; at < first + amount; at += 1) {
      const clump = tree.order[at] ?? 0;
      if (!pyramid.misses(boxes, clump * 6)) found.push(clump);
    }
  }
  return Int32Array.from(found).sort();
}

/** Shadows that room is made for at once; more make it grow. */
const MOST_ROOM = 4096;

/** With more faces than this in the window each is too small to hide much. */
const MOST_FACES = 50_000;
