import type { Scene } from '../assess/scene.ts';
import type { Pointed } from '../editor/tools/pointed.ts';
import { pick, type Pickable } from './picking.ts';
import { meetLevel, type Sheet, type Spot } from './sheet.ts';

/** Signs and handles that lie over the picture, for the pointer to find before what is behind them. */
export interface SignAt {
  readonly camera: string | null;
  readonly lamp: string | null;
  readonly handle: Pointed['handle'];
}

export interface Held {
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly pointerType?: string;
}

/** What a place on the window means in the site. */
export function pointedAt(
  sheet: Sheet,
  spot: Spot,
  scene: Scene | null,
  solids: Pickable,
  sign: SignAt,
  held: Held,
): Pointed {
  const ray = sheet.rayFromSpot(spot);
  const hit = pick(solids, ray);
  const ground = scene === null || sheet.eye[2] < scene.ground ? null : meetLevel(ray, scene.ground);
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
    hit && hit.distance <= toGround
      ? { point: hit.point, normal: hit.normal, structure: hit.solid.structure }
      : ground && onBoard
        ? { point: ground, normal: [0, 0, 1], structure: null }
        : null;
  return {
    ray,
    struck,
    ...sign,
    metresPerPixel: sheet.metresPerPixel(struck?.point ?? ground ?? [0, 0, 0]),
    shift: held.shiftKey,
    free: held.ctrlKey || held.metaKey,
    by: held.pointerType === 'touch' ? 'touch' : held.pointerType === 'pen' ? 'pen' : 'mouse',
  };
}
