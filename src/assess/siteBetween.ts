import type { CameraCoverage } from '../coverage/coverage.ts';
import { countedGround } from '../coverage/countedGround.ts';
import { flatLayer } from '../coverage/layer.ts';
import { ruleOf } from '../coverage/rule.ts';
import type { SiteAreas } from '../coverage/siteAreas.ts';
import { siteBrackets } from '../coverage/siteBrackets.ts';
import { SolidsAt } from '../coverage/solidsAt.ts';
import { sightOf } from '../sight/sightOf.ts';
import type { Question } from './assessment.ts';
import type { Layout } from './layouts.ts';

/**
 * The areas of a site that has no exact ones, on walls or of many cameras, between bounds; null where only cells can tell: at
 * night, over uneven ground, and while something is dragged.
 */
export function siteBetween(
  { causes }: Question,
  { scene, ground, obstacles, target, edition, faceCaps }: Layout,
  counting: readonly CameraCoverage[],
): SiteAreas | null {
  if (causes === 'quick' || ground.uneven !== null || ground.lit !== null) return null;
  const inside = new SolidsAt(scene.solids, ground.plane);
  const layers = counting.map(({ camera }) =>
    flatLayer(
      sightOf(camera, ground.plane, ground.window, obstacles.facets),
      inside,
      ruleOf(camera, target, edition.bands, faceCaps),
    ),
  );
  const { parts, whole } = ground.within;
  return siteBrackets(layers, countedGround(parts, whole), edition.bands.length);
}
