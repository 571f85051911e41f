import { bearing, degreesFromRad, turn } from '../../base/angle.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import { dotOf } from '../../model/segment.ts';
import type { Camera } from '../../optics/camera.ts';
import { siteRayFromImage, type ImagePoint } from '../../optics/projection.ts';
import { imageFromUpright, quarterOf, uprightFrame } from '../../optics/upright.ts';
import type { Segments } from '../../sight/segment.ts';

/** The bearing of a direction over ground, °. */
export const bearingOf = ([x, y]: Vec2): number => bearing(degreesFromRad(Math.atan2(x, y)));

/**
 * How far a camera is turned from straight out, °, in (−180, 180]; to the right of whoever stands with the back to the wall
 * positive, which is clockwise seen from above.
 */
export const turnedFrom = (out: Vec2, pan: number): number => turn(bearingOf(out), pan);

/** A place on the ground that falls on the left or the right edge of the upright picture. */
export interface EdgeMark {
  readonly side: 'left' | 'right';
  readonly at: Vec3;
  /** How far down that edge it appears, as a share of its height. */
  readonly down: number;
  /** Out from what the camera is fixed to, m; and to the right, with the back to it, positive, m. */
  readonly out: number;
  readonly beside: number;
  readonly distance: number;
}

/** Marks farther off than this are hard to see in a picture, m. */
const FARTHEST = 20;
const NEAREST = 1;

/**
 * For each side of the picture the place nearest to the middle of its edge that lies on open ground in sight: two sticks there
 * set a varifocal lens. A side without one is left out.
 * @param level height of flat ground; null where the ground is a solid among the others
 * @param from  the hole over ground, and the level unit direction straight out
 */
export function edgeMarks(
  camera: Camera,
  segments: Segments,
  level: number | null,
  isGround: (solid: number) => boolean,
  from: { readonly hole: Vec2; readonly out: Vec2 },
): readonly EdgeMark[] {
  return (['left', 'right'] as const).flatMap((side) => {
    for (let step = 0; step <= 18; step += 1) {
      // Down the edge from its middle to its foot.
      const down = 0.5 + step * 0.025;
      const at = groundSeen(camera, edgePoint(camera, side, down), segments, level, isGround);
      if (at === null) continue;
      const off: Vec2 = [at[0] - from.hole[0], at[1] - from.hole[1]];
      const distance = Math.hypot(...off);
      if (distance > FARTHEST || distance < NEAREST) continue;
      const right: Vec2 = [from.out[1], 0 - from.out[0]];
      return [{ side, at, down, out: dotOf(off, from.out), beside: dotOf(off, right), distance }];
    }
    return [];
  });
}

/** A place on an edge of the picture as it stands upright, in pixels of the recorded one. */
function edgePoint(camera: Camera, side: 'left' | 'right', down: number): ImagePoint {
  const quarter = quarterOf(camera);
  const { width, height } = uprightFrame(camera.frame, quarter);
  return imageFromUpright({ u: side === 'left' ? 0 : width, v: down * height }, camera.frame, quarter);
}

/** The open ground that a place of the picture shows; null where it shows something else. */
function groundSeen(
  camera: Camera,
  place: ImagePoint,
  segments: Segments,
  level: number | null,
  isGround: (solid: number) => boolean,
): Vec3 | null {
  const ray = siteRayFromImage(camera, place);
  if (ray === null || ray[2] >= -1e-6) return null;
  const { eye } = camera;
  const far = level === null ? 2 * FARTHEST : Math.min(2 * FARTHEST, (level - eye[2]) / ray[2]);
  if (!(far > 0)) return null;
  const end: Vec3 = [eye[0] + ray[0] * far, eye[1] + ray[1] * far, eye[2] + ray[2] * far];
  if (segments.firstHit(eye, end, 'screen') !== null || segments.firstHit(eye, end, 'clear') !== null)
    return null;
  const hit = segments.firstHit(eye, end, 'solid');
  if (hit === null) return level !== null && far < 2 * FARTHEST ? end : null;
  if (!isGround(hit.solid)) return null;
  const way = far * hit.share;
  return [eye[0] + ray[0] * way, eye[1] + ray[1] * way, eye[2] + ray[2] * way];
}
