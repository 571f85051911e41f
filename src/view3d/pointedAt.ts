import type { Scene } from '../assess/scene.ts';
import { length, subtract, unit, type Vec3 } from '../base/vector.ts';
import type { Pointed } from '../editor/tools/pointed.ts';
import { GROUND, groundOf } from './ground/terrainFaces.ts';
import { pick, type Pickable } from './picking.ts';
import { meetLevel, type Sheet, type Spot } from './sheet.ts';

/** Signs and handles that lie over the picture, for the pointer to find before what is behind them. */
export interface SignAt {
  readonly camera: string | null;
  readonly lamp: string | null;
  readonly handle: Pointed['handle'];
}

/** What of a selection lies under the pointer. */
type Over = SignAt & Pick<Pointed, 'grip' | 'picture'>;

export interface Held {
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly pointerType?: string;
}

/** The view looks straight down. */
const PLAN = -0.9999;
/** What stands nearer than this before a point does not count as before it, m. */
const NEAR = 0.01;

/** Whether nothing stands before a point; from above everything counts. */
function isSeen(sheet: Sheet, solids: Pickable, point: Vec3): boolean {
  if (sheet.ahead[2] < PLAN) return true;
  const to = subtract(point, sheet.eye);
  const away = length(to);
  const hit = pick(solids, { from: sheet.eye, along: unit(to) });
  return hit === null || hit.distance > away - NEAR;
}

/** What a place on the window means in the site. */
export function pointedAt(
  sheet: Sheet,
  spot: Spot,
  scene: Scene | null,
  solids: Pickable,
  over: Over,
  held: Held,
): Pointed {
  const ray = sheet.rayFromSpot(spot);
  const hit = pick(solids, ray);
  const uneven = scene !== null && groundOf(scene) !== null;
  const onGround = hit?.solid.id === GROUND;
  const ground =
    scene === null || sheet.eye[2] < scene.ground
      ? null
      : uneven
        ? onGround
          ? hit.point
          : null
        : meetLevel(ray, scene.ground);
  const onBoard =
    ground !== null &&
    scene !== null &&
    ground[0] >= scene.board.left &&
    ground[0] <= scene.board.right &&
    ground[1] >= scene.board.bottom &&
    ground[1] <= scene.board.top;
  const toGround = ground
    ? Math.hypot(ground[0] - ray.from[0], ground[1] - ray.from[1], ground[2] - ray.from[2])
    : Infinity;
  const struck: Pointed['struck'] =
    hit && !onGround && hit.distance <= toGround
      ? { point: hit.point, normal: hit.normal, structure: hit.solid.structure }
      : ground && onBoard
        ? { point: ground, normal: onGround ? hit.normal : [0, 0, 1], structure: null }
        : null;
  return {
    ray,
    struck,
    ...over,
    metresPerPixel: sheet.metresPerPixel(struck?.point ?? ground ?? [0, 0, 0]),
    shift: held.shiftKey,
    free: held.ctrlKey || held.metaKey,
    screen: {
      spot: [spot.x, spot.y],
      place: (point) => {
        const at = sheet.spotFromSite(point);
        return at && [at.x, at.y];
      },
      seen: (point) => isSeen(sheet, solids, point),
      plan: sheet.ahead[2] < PLAN,
    },
    by: held.pointerType === 'touch' ? 'touch' : held.pointerType === 'pen' ? 'pen' : 'mouse',
  };
}
