import { angleOfRadius, angleOfView, radius } from '../../optics/lens.ts';
import type { Device, PictureMode } from '../../optics/device.ts';
import { lawOf, pictureSensor, statedWidth } from '../../optics/setting.ts';
import { setMode } from '../../plan/commands/setModes.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Setting } from './setting.ts';

/** Pixels across and down of a picture mode. */
export function modePixels({ id }: PlanCamera, mode: PictureMode): readonly [Setting, Setting] {
  const side = (key: 'width' | 'height', label: string): Setting => ({
    key: `${mode.id} ${key}`,
    label: `${label}, ${mode.name}`,
    measure: 'pixels',
    bounds: LIMITS.pixels,
    value: mode.frame[key],
    change: (plan, value) => setMode(plan, id, mode.id, { frame: { ...mode.frame, [key]: value } }),
  });
  return [side('width', 'Pixels across'), side('height', 'Pixels down')];
}

/**
 * What of a mode says how much of the sensor it uses: its share of the width, and the angle across that follows. Typing either
 * gives it a part in the middle, of the shape of its pixels.
 */
export function modeShare({ id, name, device }: PlanCamera, mode: PictureMode): readonly Setting[] {
  const { lens } = device;
  const { k } = lawOf(lens, statedWidth(device), name);
  const most = mostShare(device, mode);
  const own = mode.use === 'rotated' ? device.sensor.height : device.sensor.width;
  const change = (plan: Plan, share: number) => setMode(plan, id, mode.id, cropOf(device, mode, share));
  const { width } = pictureSensor(device, mode);
  const angle = angleOfView(lens.focalLength, k, width);
  const widest = angleOfView(lens.focalLength, k, own * most);
  const share: Setting = {
    key: `${mode.id} share`,
    label: `Share of the sensor, ${mode.name}`,
    measure: 'percent',
    bounds: { least: 1, most: most * 100 },
    value: (width / own) * 100,
    change: (plan, value) => change(plan, value / 100),
  };
  if (angle === null || widest === null) return [share];
  return [
    share,
    {
      key: `${mode.id} angle`,
      label: `Angle across, ${mode.name}`,
      measure: 'angle',
      bounds: { least: LIMITS.angleOfView.least, most: widest },
      value: angle,
      change: (plan, value) => {
        const half = radius(lens.focalLength, k, value / 2);
        return half === null ? plan : change(plan, Math.min(most, (2 * half) / own));
      },
    },
  ];
}

/** The greatest share of its own side that a picture of these pixels can take, so that its other side fits too. */
function mostShare({ sensor }: Device, { frame, use }: PictureMode): number {
  const [width, height] = use === 'rotated' ? [sensor.height, sensor.width] : [sensor.width, sensor.height];
  return Math.min(1, ((height / width) * frame.width) / frame.height);
}

/** A crop in the middle of the sensor that takes a share of the picture's own width, and as much height as its pixels ask. */
function cropOf(device: Device, mode: PictureMode, share: number): Pick<PictureMode, 'crop' | 'cropKnown'> {
  const { sensor } = device;
  const turned = mode.use === 'rotated';
  const [own, other] = turned ? [sensor.height, sensor.width] : [sensor.width, sensor.height];
  const across = Math.max(0.001, share);
  const down = Math.min(
    1,
    Math.max(0.001, ((across * own) / other) * (mode.frame.height / mode.frame.width)),
  );
  const [width, height] = turned ? [down, across] : [across, down];
  return { crop: { x: (1 - width) / 2, y: (1 - height) / 2, width, height }, cropKnown: true };
}

/** The angle across of a mode at the lens's present setting, °; null where the law ends inside it. */
export function modeAngle({ device, name }: PlanCamera, mode: PictureMode): number | null {
  const { k } = lawOf(device.lens, statedWidth(device), name);
  const half = angleOfRadius(device.lens.focalLength, k, pictureSensor(device, mode).width / 2);
  return half === null ? null : 2 * half;
}
