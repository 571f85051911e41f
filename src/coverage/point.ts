import type { Vec3 } from '../base/vector.ts';
import { insideSolid } from '../model/inside.ts';
import type { Solid } from '../model/solid.ts';
import type { Camera } from '../optics/camera.ts';
import { densityAt, depressionAt } from '../optics/density.ts';
import { inFrame } from '../optics/projection.ts';
import type { Segments } from '../sight/segment.ts';
import type { BandRule } from './rule.ts';
import type { State } from './state.ts';

/** What a camera makes of one point. Site frame. */
export interface PointState {
  readonly state: State;
  /** Index + 1 of the band; 0 none. */
  readonly band: number;
  readonly density: number | null;
  readonly depression: number;
  readonly hider: number | null;
  /** How far before the point the hider is met, m. */
  readonly before: number | null;
}

/** Judges one point by a ray: the same states in the same order as the cells. */
export function pointState(
  camera: Camera,
  point: Vec3,
  solids: readonly Solid[],
  segments: Segments,
  rule: BandRule,
  lensInside: number | null,
): PointState {
  const depression = depressionAt(camera.eye, point);
  const density = densityAt(camera, point)?.horizontal ?? null;
  const plain = (state: State, band = 0): PointState => ({
    state,
    band,
    density,
    depression,
    hider: null,
    before: null,
  });
  if (solids.some((solid) => insideSolid(solid, point))) return plain('inside');
  if (!inFrame(camera, point) || density === null) return plain('out of frame');
  if (lensInside !== null) return { ...plain('hidden'), hider: lensInside };
  const far = Math.hypot(point[0] - camera.eye[0], point[1] - camera.eye[1], point[2] - camera.eye[2]);
  for (const [passage, state] of [
    ['solid', 'hidden'],
    ['screen', 'screened'],
  ] as const) {
    const hit = segments.firstHit(camera.eye, point, passage);
    if (hit !== null) return { ...plain(state), hider: hit.solid, before: (1 - hit.share) * far };
  }
  const band = rule.band(
    density,
    point[0] - camera.eye[0],
    point[1] - camera.eye[1],
    camera.eye[2] - point[2],
  );
  return plain(band > 0 ? 'covered' : 'too coarse', band);
}
