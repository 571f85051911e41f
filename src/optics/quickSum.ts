import { tan } from '../base/angle.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Camera, Extent } from './camera.ts';
import { densityAt, depressionAt } from './density.ts';
import { frameEdges } from './frameEdges.ts';
import { angleOfView, lawRad, solveK } from './lens.ts';
import { inFrame } from './projection.ts';
import { widthOfView } from './widthOfView.ts';

/*
 * The sums that are done with no house: one camera over flat ground, one target straight ahead of it, by the very
 * projection that judges a plan. The lens stands over the origin and looks north; distances are over ground, from the point
 * below the lens.
 */

/** Width of a face, m: the pages that tell pixels across a face take 16 cm. */
const FACE_WIDTH = 0.16;

/** A lens as it is known: by focal length (mm), by angle across (°), or by both, from which its law follows. */
interface SumLens {
  readonly focalLength: number | null;
  readonly hfov: number | null;
  /** The law where it is known itself, beside the focal length, as of a camera of a plan. */
  readonly law?: number;
}

/** What a sum starts from. */
export interface SumAsked {
  /** Of the lens, above the ground, m. */
  readonly height: number;
  /** Of the target above the ground, m. */
  readonly targetHeight: number;
  readonly distance: number;
  /** The part of the sensor that is recorded, mm, and the pixels of that picture. */
  readonly sensor: Extent;
  readonly frame: Extent;
  readonly lens: SumLens;
  /** °, positive down; null: the one that brings the target to the middle of the picture. */
  readonly tilt: number | null;
  /** °; 90 is a picture on its side. */
  readonly roll: number;
}

/** What comes of it. */
export interface Sum {
  readonly asked: SumAsked;
  readonly camera: Camera;
  /** Angles of view, °; null where the lens law ends within the sensor. */
  readonly hfov: number | null;
  readonly vfov: number | null;
  /** Where focal length and angle contradict this sensor: the focal length, mm, that would go with the angle. */
  readonly contradicts: number | null;
  /** Whether the target lies within the picture. */
  readonly seen: boolean;
  /** Of the level line across the sight line at the target, as much as the picture holds, m; null: no end, or not seen. */
  readonly width: number | null;
  /** px/m at the target, across the sight line and upright; null without an image. */
  readonly density: number | null;
  readonly upright: number | null;
  /** Pixels across a face of 16 cm. */
  readonly face: number | null;
  /** From how far above the target is looked down on, °; negative from below. */
  readonly above: number;
  /** Between these distances targets of that height lie in the picture; null: nowhere ahead; `to` may be Infinity. */
  readonly stretch: Stretch | null;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * The sum of a lens and a place.
 * @throws RangeError on sizes that are not finite or not above 0, and on a lens of which nothing is known
 */
export function quickSum(asked: SumAsked): Sum {
  const { distance, targetHeight } = asked;
  const { camera, contradicts } = cameraOf(asked);
  const point: Vec3 = [0, distance, targetHeight];
  const seen = inFrame(camera, point);
  const density = densityAt(camera, point);
  return {
    asked,
    camera,
    contradicts,
    hfov: angleOfView(camera.focalLength, camera.k, camera.sensor.width),
    vfov: angleOfView(camera.focalLength, camera.k, camera.sensor.height),
    seen,
    width: seen ? widthOfView(camera, point) : null,
    density: density?.horizontal ?? null,
    upright: density?.vertical ?? null,
    face: density === null ? null : density.horizontal * FACE_WIDTH,
    above: depressionAt(camera.eye, point),
    stretch: stretchOf(camera, targetHeight),
  };
}

/** The camera of a sum; its range has no bound. */
function cameraOf(asked: SumAsked): { camera: Camera; contradicts: number | null } {
  const { height, targetHeight, distance, sensor, frame, tilt, roll } = asked;
  for (const n of [height, distance, sensor.width, sensor.height, frame.width, frame.height])
    if (!(n > 0 && Number.isFinite(n))) throw new RangeError(`a sum needs finite sizes above 0, got ${n}`);
  const eye: Vec3 = [0, 0, height];
  const { focalLength, k, contradicts } = lawOf(asked.lens, sensor.width);
  return {
    camera: {
      id: 'sum',
      name: 'this camera',
      eye,
      pan: 0,
      tilt: tilt ?? depressionAt(eye, [0, distance, targetHeight]),
      roll,
      focalLength,
      k,
      sensor,
      frame,
      range: Infinity,
    },
    contradicts,
  };
}

/** Focal length and law; a lens of which one number is known is taken to draw straight lines straight. */
function lawOf(
  { focalLength, hfov, law }: SumLens,
  width: number,
): { focalLength: number; k: number; contradicts: number | null } {
  if (focalLength !== null && law !== undefined) return { focalLength, k: law, contradicts: null };
  if (focalLength !== null && hfov !== null) {
    const found = solveK(focalLength, hfov, width);
    return { focalLength, k: found.k, contradicts: found.consistent ? null : found.nearestFocalLength };
  }
  if (focalLength !== null) return { focalLength, k: 1, contradicts: null };
  if (hfov === null) throw new RangeError('a lens needs a focal length or an angle');
  // From 180° on no lens draws straight: that far round it is taken to draw angles evenly.
  const k = hfov < STRAIGHT ? 1 : 0;
  return { focalLength: width / 2 / lawRad((hfov * Math.PI) / 360, k), k, contradicts: null };
}

/** Above this angle across, °, a lens known by its angle alone is taken to draw angles evenly. */
export const STRAIGHT = 140;

/** Between which distances targets at a height lie in the picture, straight ahead. */
function stretchOf(camera: Camera, targetHeight: number): Stretch | null {
  const { top, bottom } = frameEdges(camera);
  const rise = camera.eye[2] - targetHeight;
  if (rise === 0) return top <= 0 && bottom >= 0 ? { from: 0, to: Infinity } : null;
  // A target above the lens is the same seen in a mirror.
  const [high, low] = rise > 0 ? [top, bottom] : [-bottom, -top];
  if (low <= 0 || high >= 90) return null;
  const up = Math.abs(rise);
  return { from: low >= 90 ? 0 : up / tan(low), to: high <= 0 ? Infinity : up / tan(high) };
}

/**
 * The farthest distance straight ahead at which targets of the sum's height have so many px/m and lie in the picture.
 * @param wanted px/m
 * @returns      m; null where there is none
 */
export function reachOf({ camera, asked, stretch }: Sum, wanted: number): number | null {
  if (stretch === null) return null;
  const found = farthestAt(camera, asked.targetHeight, wanted);
  if (found === null || found < stretch.from) return null;
  return Math.min(found, stretch.to);
}

/**
 * The farthest distance straight ahead with so many px/m, in the picture or not. Px/m across the sight line fall with
 * distance for every lens law and every tilt up to 90°: they are g(θ) over the distance from the axis, which for k = 1 is
 * 1 over the depth and for smaller k grows less towards the rim.
 */
function farthestAt(camera: Camera, targetHeight: number, wanted: number): number | null {
  const dense = (distance: number): boolean =>
    (densityAt(camera, [0, distance, targetHeight])?.horizontal ?? 0) >= wanted;
  let far = 1;
  while (dense(far)) {
    far *= 2;
    if (far > FARTHEST) return FARTHEST;
  }
  // Near the foot of the lens the picture may have no image of it: the search begins where it has.
  let near = far;
  while (!dense(near)) {
    near /= 2;
    if (near < NEAREST) return null;
  }
  far = 2 * near;
  for (let step = 0; step < 80; step += 1) {
    const middle = (near + far) / 2;
    if (dense(middle)) near = middle;
    else far = middle;
  }
  return near;
}

const NEAREST = 1e-6;
const FARTHEST = 1e6;

/** Why a sum has no answer. */
export type NoAnswer = 'never so many' | 'always more';

/**
 * The distance at which the target has so many px/m: the farthest; with no tilt set, the camera is turned to it wherever
 * it stands.
 * @param wanted px/m, above 0
 */
export function distanceFor(asked: SumAsked, wanted: number): number | NoAnswer {
  const { camera } = cameraOf(asked);
  if (asked.tilt !== null) {
    const found = farthestAt(camera, asked.targetHeight, wanted);
    return found === null ? 'never so many' : found >= FARTHEST ? 'always more' : found;
  }
  // In the middle of the picture the slant distance is f over the pixel and the px/m, whatever the law.
  const at = densityAt(camera, [0, asked.distance, asked.targetHeight])?.horizontal ?? 0;
  const rise = asked.height - asked.targetHeight;
  const slant = (at * Math.hypot(asked.distance, rise)) / wanted;
  if (!(slant > Math.abs(rise))) return 'never so many';
  const distance = Math.sqrt(slant * slant - rise * rise);
  return distance > FARTHEST ? 'always more' : distance;
}

/**
 * The lens that gives so many px/m at the target: one that draws straight, since px/m are in proportion to its focal length.
 * @param wanted px/m, above 0
 * @returns      mm; null where a straight lens has no image of the target
 */
export function focalLengthFor(asked: SumAsked, wanted: number): number | null {
  const { camera } = cameraOf({ ...asked, lens: { focalLength: 1, hfov: null } });
  const one = densityAt(camera, [0, asked.distance, asked.targetHeight])?.horizontal;
  return one === undefined ? null : wanted / one;
}
