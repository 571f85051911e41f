import { SAME_POINT } from '../base/tolerance.ts';
import { add, scale, subtract, type Vec3 } from '../base/vector.ts';
import { insideSolid } from '../model/inside.ts';
import type { Solid } from '../model/solid.ts';
import type { Camera } from '../optics/camera.ts';
import { densityAt, depressionAt } from '../optics/density.ts';
import { inFrame } from '../optics/projection.ts';
import type { Segments } from '../sight/segment.ts';
import { infraredLit, isLitBy, lampParts, type Night } from './light.ts';
import { KEPT, type BandRule } from './rule.ts';
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
  /** Of a covered face: why it is below the band of its density (KEPT, TOO_STEEP, FROM_THE_SIDE). */
  readonly lost: number;
}

/**
 * Judges one point by a ray: the same states in the same order as the cells.
 * @param normal of the surface that the point is of, for the light on it
 * @param night  null by day
 */
export function pointState(
  camera: Camera,
  point: Vec3,
  solids: readonly Solid[],
  segments: Segments,
  rule: BandRule,
  lensInside: number | null,
  normal: Vec3 = UP,
  night: Night | null = null,
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
    lost: KEPT,
  });
  // Ground beneath a solid lies in its underside, where either answer would do: it is asked just above, as cells are.
  const above = add(point, scale(normal, SAME_POINT));
  if (solids.some((solid) => insideSolid(solid, above))) return plain('inside');
  if (!inFrame(camera, point) || density === null) return plain('out of frame');
  if (lensInside !== null) return { ...plain('hidden'), hider: lensInside };
  const far = Math.hypot(point[0] - camera.eye[0], point[1] - camera.eye[1], point[2] - camera.eye[2]);
  const behind = segments.firstHit(camera.eye, point, 'solid') ?? segments.closedHit(camera.eye, point);
  const hit = behind ?? segments.firstHit(camera.eye, point, 'screen');
  if (hit !== null)
    return {
      ...plain(behind === null ? 'screened' : 'hidden'),
      hider: hit.solid,
      before: (1 - hit.share) * far,
    };
  if (night !== null && !litAt(camera, point, normal, night, segments)) return plain('too dark');
  const band = rule.band(
    density,
    point[0] - camera.eye[0],
    point[1] - camera.eye[1],
    camera.eye[2] - point[2],
  );
  return { ...plain(band > 0 ? 'covered' : 'too coarse', band), lost: rule.lost };
}

const UP: Vec3 = [0, 0, 1];

/** Whether a point is lit for a camera: by its own infrared, which glass throws back, or by lamps with a free way to it. */
export function litAt(
  camera: Camera,
  point: Vec3,
  normal: Vec3,
  { infrared, lamps, leastLux }: Night,
  segments: Segments,
): boolean {
  const [dx, dy, dz] = subtract(point, camera.eye);
  const own = infrared.get(camera.id);
  if (
    own !== undefined &&
    infraredLit(camera, own)(dx, dy, dz) >= 0 &&
    segments.firstHit(camera.eye, point, 'clear') === null
  )
    return true;
  const free = lamps.filter(
    ({ eye }) =>
      segments.firstHit(eye, point, 'solid') === null && segments.firstHit(eye, point, 'screen') === null,
  );
  return isLitBy(lampParts(free, leastLux, normal, camera.eye), dx, dy, dz);
}
