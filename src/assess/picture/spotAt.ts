import { horizontalPlane } from '../../base/plane.ts';
import { add, scale, dot, subtract, type Vec3 } from '../../base/vector.ts';
import { GROUND } from '../../model/terrainSolid.ts';
import type { Camera } from '../../optics/camera.ts';
import { siteRayFromImage } from '../../optics/projection.ts';
import { imageFromUpright, quarterOf } from '../../optics/upright.ts';
import type { Segments } from '../../sight/segment.ts';
import type { Assessment } from '../assessment.ts';

/** What a place of a picture shows. */
export interface PictureSpot {
  /** Site frame, m. */
  readonly point: Vec3;
  /** Index of the solid whose face is seen there; null where it is the surface that coverage is asked for. */
  readonly solid: number | null;
}

/** How far a ray is followed, m. */
const FAR = 5_000;
/** As far above uneven ground as its cells are judged, m (coverage/unevenGround.ts). */
const LEAST_ABOVE = 1e-5;

/** The direction in which a place of the upright picture looks, unit vector in the site frame; null where the lens has no ray. */
export const wayAt = (camera: Camera, [x, y]: readonly [number, number]): Vec3 | null =>
  siteRayFromImage(camera, imageFromUpright({ u: x, v: y }, camera.frame, quarterOf(camera)));

/**
 * The spot that a place of the picture means: on what coverage is asked for, unless a solid stands before it.
 * @returns null beyond the lens, in the sky, and past the board
 */
export function spotAt(
  { scene, surface, question }: Assessment,
  camera: Camera,
  segments: Segments,
  place: readonly [number, number],
): PictureSpot | null {
  const way = wayAt(camera, place);
  if (way === null) return null;
  const hit = segments.firstHit(camera.eye, add(camera.eye, scale(way, FAR)), 'solid');
  const struck = hit && add(camera.eye, scale(way, FAR * hit.share));
  const { height } = question.target;
  if (hit && struck && scene.solids[hit.solid]?.id === GROUND && surface === null)
    return { point: [struck[0], struck[1], struck[2] + Math.max(height, LEAST_ABOVE)], solid: null };
  const plane = surface?.plane ?? horizontalPlane(scene.ground + height);
  const far = dot(subtract(plane.origin, camera.eye), plane.normal) / dot(way, plane.normal);
  const isUneven = surface === null && scene.solids.at(-1)?.id === GROUND;
  const onPlane =
    !isUneven && Number.isFinite(far) && far > 0 && far < FAR ? add(camera.eye, scale(way, far)) : null;
  const counts =
    onPlane !== null && (surface !== null ? isOn(onPlane, surface) : isOver(onPlane, scene.board));
  // On a wall the wall itself is met where the target lies.
  const isFirst = hit === null || far <= FAR * hit.share + 0.002;
  if (counts && isFirst) return { point: onPlane, solid: null };
  return struck && hit ? { point: struck, solid: hit.solid } : null;
}

const isOver = ([x, y]: Vec3, { left, right, bottom, top }: Assessment['scene']['board']): boolean =>
  x >= left && x <= right && y >= bottom && y <= top;

/** Whether a point of its plane lies on a surface. */
function isOn(point: Vec3, { plane, rings }: NonNullable<Assessment['surface']>): boolean {
  const away = subtract(point, plane.origin);
  const [a, b] = [dot(away, plane.u), dot(away, plane.v)];
  let inside = false;
  for (const ring of rings)
    ring.forEach(([x1, y1], k) => {
      const [x0, y0] = ring.at(k - 1) ?? [x1, y1];
      if (y1 > b !== y0 > b && a < ((x0 - x1) * (b - y1)) / (y0 - y1) + x1) inside = !inside;
    });
  return inside;
}
