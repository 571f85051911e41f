import type { MountLimits, Plate } from '../../optics/mount.ts';
import { moveMount } from '../../plan/commands/moveMount.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { OptionalSetting, Setting } from './setting.ts';

/** The plate over the hole: its size, and where its middle lies from the hole. None where there is no plate. */
export function plateSettings({ id, mount }: PlanCamera): readonly Setting[] {
  if (!('plate' in mount)) return [];
  const { plate } = mount;
  const side = (key: keyof Plate, label: string, bounds: Setting['bounds']): Setting => ({
    key: `plate ${key}`,
    label,
    measure: 'length',
    bounds,
    value: plate[key],
    change: (plan, value) => moveMount(plan, id, { plate: { ...plate, [key]: value } }),
  });
  return [
    side('width', 'Plate across', LIMITS.plate),
    side('height', mount.kind === 'soffit' ? 'Plate from wall outwards' : 'Plate up', LIMITS.plate),
    side('right', 'Plate right of the hole', LIMITS.plateOffset),
    side(
      'up',
      mount.kind === 'soffit' ? 'Plate outwards of the hole' : 'Plate above the hole',
      LIMITS.plateOffset,
    ),
  ];
}

/** How far the mount lets the camera turn, each of which may not be known. None for a camera that is fixed to nothing. */
export function limitSettings({ id, mount }: PlanCamera): readonly OptionalSetting[] {
  if (!('limits' in mount)) return [];
  const { limits } = mount;
  const turn = (
    key: string,
    label: string,
    value: number | null,
    first: number,
    bounds: Setting['bounds'],
    next: (value: number | null) => Partial<MountLimits>,
  ): OptionalSetting => ({
    key: `limit ${key}`,
    label,
    measure: 'angle',
    bounds,
    value,
    first,
    change: (plan: Plan, given) => moveMount(plan, id, { limits: { ...limits, ...next(given) } }),
  });
  const { pan, tilt, roll } = limits;
  return [
    turn('pan', 'Pan each way', pan, 90, LIMITS.turn, (value) => ({ pan: value })),
    turn('down', 'Tilt down to', tilt?.down ?? null, 80, LIMITS.steep, (value) => ({
      tilt: value === null ? null : { up: tilt?.up ?? 0, down: value },
    })),
    turn('up', 'Tilt up to', tilt?.up ?? null, 30, LIMITS.steep, (value) => ({
      tilt: value === null ? null : { up: value, down: tilt?.down ?? LIMITS.steep.most },
    })),
    turn('roll', 'Roll each way', roll, 90, LIMITS.turn, (value) => ({ roll: value })),
  ];
}
