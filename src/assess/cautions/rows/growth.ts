import { horizontalPlane } from '../../../base/plane.ts';
import { solidsOf } from '../../../model/solids.ts';
import { GROUND } from '../../../model/terrainSolid.ts';
import type { Structure } from '../../../model/structure.ts';
import type { Solid } from '../../../model/solid.ts';
import { convexParts } from '../../../sight/convexParts.ts';
import { facetsOf } from '../../../sight/facets.ts';
import { seenWithin, sightOf } from '../../../sight/sightOf.ts';
import { boardCorners } from '../../ground.ts';
import { cautionId, placeOn, type About } from '../about.ts';
import type { Found } from '../caution.ts';
import { patches } from '../pictureRays.ts';

/** More trees than this in one picture are a wood: the nearest are told. */
const MOST = 4;

/** A hedge or a tree after so much growth, m upwards and to every side; null for anything else. */
function grown(structure: Structure, by: number): Structure | null {
  if (structure.kind === 'tree')
    return { ...structure, height: structure.height + by, crownRadius: structure.crownRadius + by / 2 };
  if (structure.kind !== 'barrier' || structure.sort !== 'hedge') return null;
  return { ...structure, height: structure.height + by, thickness: structure.thickness + by / 2 };
}

/** The ground that a camera sees within the boundary, else the board, among some solids, m²: exact, by its outline. */
function seenGround({ camera, scene }: About, solids: readonly Solid[]): number {
  const plane = horizontalPlane(scene.ground);
  const window = boardCorners(scene.board);
  const found = sightOf(camera, plane, window, facetsOf(solids, scene.closing));
  const parts = scene.boundary === null ? [window] : convexParts(scene.boundary);
  return parts.reduce((sum, part) => sum + seenWithin(found, part).area, 0);
}

/**
 * Row 24: how much ground a hedge or a tree in or beside the picture hides when it has grown. Of a tree height grows by the
 * rate and the crown's radius by half of it. Not told over uneven ground, where there is no outline.
 */
export function* growing(about: About): Generator<void, readonly Found[], void> {
  const { plan, camera, picture, scene } = about;
  if (scene.solids.at(-1)?.id === GROUND) return [];
  const years = about.limit('growth.years');
  const least = about.limit('growth.area');
  const named = patches(camera.eye, picture, ({ thing }) => thing)
    .flatMap(({ key, at, near }) => {
      const solid = scene.solids[key];
      const structure = solid === undefined ? undefined : plan.structures[solid.structure];
      return solid === undefined || structure === undefined ? [] : [{ structure, solid, at, near }];
    })
    .filter(({ structure }, at, all) => all.findIndex((one) => one.structure === structure) === at);
  const found: Found[] = [];
  let before: number | null = null;
  for (const { structure, solid, at } of named.sort((one, two) => one.near - two.near)) {
    const id = structure.kind === 'tree' ? 'growth.tree' : 'growth.hedge';
    const taller = grown(structure, about.limit(id) * years);
    if (taller === null || found.length >= MOST) continue;
    before ??= seenGround(about, scene.solids);
    yield;
    const stood = scene.solids.filter((one) => one.structure === structure.id);
    // As its passage is in these conditions: bare, or in leaf.
    const made = solidsOf(taller, scene.ground).solids.map((one, k) => ({
      ...one,
      passage: stood[k]?.passage ?? one.passage,
    }));
    const others = scene.solids.filter((one) => one.structure !== structure.id);
    const area = before - seenGround(about, [...others, ...made]);
    yield;
    if (area <= least) continue;
    found.push({
      id: cautionId(24, structure.id),
      severity: 'tell',
      weight: area / Math.max(least, 0.01),
      figures: { row: 24, thing: structure.name, years, area },
      places: [placeOn(about, solid, at)],
      thresholds: [id, 'growth.years', 'growth.area'],
    });
  }
  return found;
}
