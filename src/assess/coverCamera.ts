import type { Vec3 } from '../base/vector.ts';
import { areasOf } from '../coverage/areas.ts';
import type { Band } from '../coverage/band.ts';
import { cellsOf, type Scratch } from '../coverage/cells.ts';
import type { CameraCoverage, Cells, Reach } from '../coverage/coverage.ts';
import { frustumOf } from '../coverage/frustum.ts';
import { litAt, pointState } from '../coverage/point.ts';
import { nightFor } from '../coverage/litGround.ts';
import { reachOf } from '../coverage/reach.ts';
import { ruleOf } from '../coverage/rule.ts';
import type { FaceCap, Target } from '../coverage/target.ts';
import { unevenAreas } from '../coverage/unevenAreas.ts';
import { unevenCells, unevenLensInside } from '../coverage/unevenCells.ts';
import type { UnevenGround } from '../coverage/unevenGround.ts';
import { unevenReach } from '../coverage/unevenReach.ts';
import type { Camera } from '../optics/camera.ts';
import type { Facets } from '../sight/facets.ts';
import { sightOf, sightOfNothing } from '../sight/sightOf.ts';
import type { Question } from './assessment.ts';
import type { Ground, Obstacles } from './ground.ts';

/** By what a target is judged. */
export interface Judging {
  readonly target: Target;
  readonly bands: readonly Band[];
  readonly caps: readonly FaceCap[];
  readonly causes: Question['causes'];
}

/** A coverage, and how many shadows are in its frame: above so many, exact causes come from cells. */
export interface Covered {
  readonly coverage: CameraCoverage;
  readonly shadows: number;
}

/** The cells of a target surface as one camera sees them. */
export function judgeCells(
  camera: Camera,
  { target, bands, caps }: Omit<Judging, 'causes'>,
  facets: Facets,
  ground: Ground,
  scratch: Scratch,
): Cells {
  const rule = ruleOf(camera, target, bands, caps);
  const night = ground.lit && nightFor(camera, ground.lit);
  if (ground.uneven !== null)
    return unevenCells(camera, ground.uneven, facets, ground.bare, rule, scratch, night);
  const found = sightOf(camera, ground.plane, ground.window, facets);
  return cellsOf(camera, found, ground.grid, ground.bare, rule, scratch, night);
}

/** All that one camera makes of a target surface. */
export function coverCamera(
  camera: Camera,
  judging: Judging,
  obstacles: Obstacles,
  ground: Ground,
  scratch: Scratch,
): Covered {
  if (ground.uneven !== null) return coverUneven(camera, judging, obstacles, ground, ground.uneven, scratch);
  const { target, bands, caps, causes } = judging;
  const { facets, segments } = obstacles;
  const rule = ruleOf(camera, target, bands, caps);
  const found = sightOf(camera, ground.plane, ground.window, facets);
  const night = ground.lit && nightFor(camera, ground.lit);
  const cells = cellsOf(camera, found, ground.grid, ground.bare, rule, scratch, night);
  const lit = ground.lit && pointLight(camera, ground, segments);
  const reach: Reach =
    target.kind === 'surface'
      ? { nearBlindDistance: null, byBand: bands.map(() => null) }
      : reachOf(camera, ground.plane, facets, rule, bands.length, found.sight.lensInside !== null, lit);
  const coverage = {
    camera,
    target,
    sight: found.sight,
    cells,
    areas: areasOf(camera, cells, found, ground.within, rule, facets.solids, causes, ground.lit),
    reach,
    frustum: frustumOf(camera, ground.floor, segments),
  };
  return { coverage, shadows: found.all.count };
}

/** Over uneven ground there are no outlines: cells tell everything, and a ray at a time how far the camera serves. */
function coverUneven(
  camera: Camera,
  { target, bands, caps }: Judging,
  { facets, segments }: Obstacles,
  ground: Ground,
  uneven: UnevenGround,
  scratch: Scratch,
): Covered {
  const rule = ruleOf(camera, target, bands, caps);
  const night = ground.lit && nightFor(camera, ground.lit);
  const cells = unevenCells(camera, uneven, facets, ground.bare, rule, scratch, night);
  const inside = unevenLensInside(camera.eye, uneven, facets);
  const { normal } = ground.plane;
  const lights = ground.lit?.night ?? null;
  const bandAt = (point: Vec3): number =>
    pointState(camera, point, [], segments, rule, inside, normal, lights).band;
  const coverage = {
    camera,
    target,
    sight: sightOfNothing(camera, ground.plane, facets.solids.length, inside),
    cells,
    areas: unevenAreas(cells, ground.within, facets.solids.length, bands.length),
    reach: unevenReach(camera, uneven, bandAt, bands.length),
    frustum: frustumOf(camera, ground.floor, segments),
  };
  return { coverage, shadows: 0 };
}

/** A coverage with quick causes, made exact; all else stays. */
export function refinedCoverage(
  coverage: CameraCoverage,
  { target, bands, caps }: Judging,
  { facets }: Obstacles,
  ground: Ground,
): CameraCoverage {
  if (ground.uneven !== null) return coverage;
  const { camera, cells } = coverage;
  const rule = ruleOf(camera, target, bands, caps);
  const found = sightOf(camera, ground.plane, ground.window, facets);
  return {
    ...coverage,
    areas: areasOf(camera, cells, found, ground.within, rule, facets.solids, 'exact', ground.lit),
  };
}

/** Whether points are lit for a camera, by rays. */
const pointLight =
  (camera: Camera, { lit, plane }: Ground, segments: Obstacles['segments']) =>
  (dx: number, dy: number, dz: number): boolean =>
    lit === null ||
    litAt(
      camera,
      [camera.eye[0] + dx, camera.eye[1] + dy, camera.eye[2] + dz],
      plane.normal,
      lit.night,
      segments,
    );
