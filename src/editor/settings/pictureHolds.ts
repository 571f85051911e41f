import type { Vec2, Vec3 } from '../../base/vector.ts';
import { aimThrough } from '../../optics/aimThrough.ts';
import type { Camera } from '../../optics/camera.ts';
import { limitsOf } from '../../optics/mount.ts';
import { imageFromUpright, quarterOf } from '../../optics/upright.ts';
import { aimWithin } from '../../plan/commands/aimWithin.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { focalSettings, isVarifocal } from './lensSettings.ts';
import type { Setting } from './setting.ts';

/** Angles are kept to this, °: finer than a pixel of a long lens. */
const FINE = 0.01;

const fine = (degrees: number): number => Number((Math.round(degrees / FINE) * FINE).toFixed(2));

/**
 * The plan with a camera aimed so that a direction of the site is seen at a place of its upright picture, as near as its mount
 * lets it turn.
 * @param way  unit vector in the site frame
 * @param only the one angle that may change
 */
export function aimedThrough(
  plan: Plan,
  { id, mount }: PlanCamera,
  camera: Camera,
  way: Vec3,
  place: Vec2,
  only: 'pan' | 'tilt' | null = null,
): Plan {
  const at = imageFromUpright({ u: place[0], v: place[1] }, camera.frame, quarterOf(camera));
  const { tilt } = limitsOf(mount);
  const bounds = tilt === null ? { least: -90, most: 90 } : { least: -tilt.up, most: tilt.down };
  const aim = aimThrough(camera, way, at, bounds);
  if (aim === null) return plan;
  return aimWithin(plan, id, {
    ...(only === 'tilt' ? {} : { pan: fine(aim.pan) % 360 }),
    ...(only === 'pan' ? {} : { tilt: fine(aim.tilt) }),
  });
}

/** The plan with a camera turned by so many degrees: right, and down. */
export function turnedBy(plan: Plan, { id }: PlanCamera, right: number, down: number): Plan {
  const camera = plan.cameras[id];
  if (camera === undefined) return plan;
  const tilt = Math.min(90, Math.max(-90, fine(camera.tilt + down)));
  return aimWithin(plan, id, {
    ...(right === 0 ? {} : { pan: ((fine(camera.pan + right) % 360) + 360) % 360 }),
    ...(down === 0 ? {} : { tilt }),
  });
}

/** The focal length of a lens as it is set, mm, to be drawn out or in; null where the lens is fixed. */
export const zoomSetting = (camera: PlanCamera): Setting | null =>
  isVarifocal(camera.device.lens)
    ? (focalSettings(camera).find(({ key }) => key === 'focal length') ?? null)
    : null;
