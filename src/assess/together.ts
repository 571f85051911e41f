import { less, NO_AREA } from '../coverage/area.ts';
import type { Band } from '../coverage/band.ts';
import type { CameraCoverage, SiteCoverage } from '../coverage/coverage.ts';
import { ruleOf } from '../coverage/rule.ts';
import { siteOf } from '../coverage/site.ts';
import { MOST_OVERLAID, siteAreas, type SiteAreas } from '../coverage/siteAreas.ts';
import type { FaceCap, Target } from '../coverage/target.ts';
import type { Camera } from '../optics/camera.ts';
import type { Plan } from '../plan/plan.ts';
import type { Region, Window } from '../sight/sight.ts';
import type { Question } from './assessment.ts';
import type { Layout } from './layouts.ts';

/** What the exact areas of a site are worked out from, small enough to send. */
export interface SiteAsked {
  readonly seers: readonly { readonly camera: Camera; readonly seen: Region }[];
  readonly ring: Window;
  /** Of the target above z = 0, m. */
  readonly height: number;
  readonly target: Target;
  readonly bands: readonly Band[];
  readonly caps: readonly FaceCap[];
}

/** Areas of a site by the best of its cameras and by how many, along the curves themselves. */
export const exactSite = ({ seers, ring, height, target, bands, caps }: SiteAsked): SiteAreas =>
  siteAreas(
    ring,
    seers.map(({ camera, seen }) => ({ camera, seen, rule: ruleOf(camera, target, bands, caps) })),
    height,
    bands.length,
  );

/** Indices of the cameras that count: the one asked for alone, or all that are not hidden. */
export const countedIn = (plan: Plan, { alone }: Question, { scene }: Layout): readonly number[] =>
  scene.cameras.flatMap(({ id }, index) =>
    (alone === null ? !plan.cameras[id]?.hidden : id === alone) ? [index] : [],
  );

/** What the exact site areas of a question are asked with; null where they come from cells. */
export function siteAsked(
  { causes }: Question,
  { scene, ground, surface, target, edition, faceCaps }: Layout,
  counting: readonly CameraCoverage[],
): SiteAsked | null {
  const isFlat = surface === null && ground.uneven === null;
  if (causes === 'quick' || !isFlat || ground.lit !== null || counting.length > MOST_OVERLAID) return null;
  return {
    seers: counting.map(({ camera, sight }) => ({ camera, seen: sight.seen })),
    ring: scene.boundary ?? ground.window,
    height: ground.plane.origin[2],
    target,
    bands: edition.bands,
    caps: faceCaps,
  };
}

/** All cameras that count together: picture from cells, areas from cells or, where they are given, those. */
export function together(
  { ground, edition }: Layout,
  cameras: readonly CameraCoverage[],
  counted: readonly number[],
  exact: SiteAreas | null,
): SiteCoverage {
  const fromCells = siteOf(
    ground.grid,
    counted.flatMap((index) => cameras[index]?.cells ?? []),
    counted,
    ground.counted,
    ground.open,
    edition.bands.length,
  );
  if (exact === null) return fromCells;
  const { atLeast, byCount } = exact;
  return fromCells.withAreas({
    open: fromCells.open,
    byCount,
    byBand: atLeast.map((area, band) => less(area, atLeast[band + 1] ?? NO_AREA)),
    unseen: less(ground.open, atLeast[0] ?? NO_AREA),
  });
}
