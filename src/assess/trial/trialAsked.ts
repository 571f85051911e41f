import { GROUND } from '../../model/terrainSolid.ts';
import type { Assessment } from '../assessment.ts';
import { boardCorners } from '../ground.ts';
import type { SiteAsked } from '../together.ts';

/**
 * What the exchange between two cameras of an assessment is worked out from, small enough to send; null where it comes from
 * cells, or where one of them is not there.
 */
export function trialAsked(assessment: Assessment, standing: string, other: string): SiteAsked | null {
  const { scene, surface, cameras, question, edition, faceCaps, site } = assessment;
  const isUneven = scene.solids.at(-1)?.id === GROUND;
  if (surface !== null || isUneven || scene.night !== null) return null;
  const seers = [standing, other].flatMap((id) =>
    cameras
      .filter(({ camera }) => camera.id === id)
      .map(({ camera, sight }) => ({ camera, seen: sight.seen })),
  );
  if (seers.length < 2) return null;
  return {
    seers,
    ring: scene.boundary ?? boardCorners(scene.board),
    height: site.grid.plane.origin[2],
    target: question.target,
    bands: edition.bands,
    caps: faceCaps,
  };
}
