import { degreesFromRad } from '../../base/angle.ts';
import { frameEdges } from '../../optics/frameEdges.ts';
import { pictureRoll, settingOf } from '../../optics/setting.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { tiltSetting } from './aimSettings.ts';
import { focalSettings, isVarifocal } from './lensSettings.ts';
import { mountSettings } from './mountSettings.ts';
import type { Setting } from './setting.ts';

/** A number of the plan that is held in the Section, and which way it goes as the lens rises, tilts or lengthens. */
export interface Hold {
  readonly setting: Setting;
  /** −1 where the number falls as the lens rises: below a soffit. */
  readonly sense: 1 | -1;
}

/** What of a camera is held in its Section; null where its mount or lens gives no such number. */
export interface SectionHolds {
  readonly height: Hold | null;
  readonly tilt: Hold;
  readonly lens: Hold | null;
}

/** The numbers behind the Section's handles, with the bounds that the Setting sheet has. */
export function sectionHolds(plan: Plan, camera: PlanCamera): SectionHolds {
  const measures = mountSettings(plan, camera);
  const of = (key: string) => measures.find((setting) => setting.key === key);
  const drop = camera.mount.kind === 'soffit' ? of('drop') : undefined;
  const height = of('height') ?? of('eye z');
  const focal = isVarifocal(camera.device.lens)
    ? focalSettings(camera).find(({ key }) => key === 'focal length')
    : undefined;
  return {
    height: height ? { setting: height, sense: 1 } : drop ? { setting: drop, sense: -1 } : null,
    tilt: { setting: tiltSetting(camera), sense: 1 },
    lens: focal ? { setting: focal, sense: 1 } : null,
  };
}

/** A value moved by a step, on the step's own multiples and within a setting's bounds. */
export function movedBy({ setting, sense }: Hold, value: number, by: number, step: number): number {
  const moved = Math.round((value + sense * by) / step) * step;
  // A decimal step leaves no binary tail in the plan.
  const told = Number(moved.toFixed(6));
  return Math.min(setting.bounds.most, Math.max(setting.bounds.least, told));
}

/** Halvings until a focal length is found to a hundredth of its last digit. */
const HALVINGS = 40;

/**
 * The focal length of a varifocal lens, mm, at which the frame's sides lie an angle off the axis in the Section; an end of its
 * range where none does.
 * @param half °
 */
export function focalLengthFor(camera: PlanCamera, half: number): number {
  const { device, tilt, roll, name } = camera;
  const { shortest, longest } = device.lens;
  const halfAt = (focalLength: number): number => {
    const { setting } = settingOf({ ...device, lens: { ...device.lens, focalLength } }, name);
    return frameEdges({ ...setting, tilt, roll: pictureRoll(device, roll) }).bottom - tilt;
  };
  let [low, high] = [shortest, longest];
  if (half >= halfAt(low)) return low;
  if (half <= halfAt(high)) return high;
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (halfAt(middle) > half) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The depression of a place from the lens, °, in (−180, 180]: t ahead, h up from the lens. */
export const depressionOf = (t: number, h: number): number => degreesFromRad(Math.atan2(-h, t));
