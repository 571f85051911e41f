import type { Extent } from '../../optics/camera.ts';
import type { Lens } from '../../optics/device.ts';
import { setLens } from '../../plan/commands/setLens.ts';
import { setSensor } from '../../plan/commands/setSensor.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Setting } from './setting.ts';

/** Active width and height of the sensor. */
export function sensorSettings({ id, device }: PlanCamera): readonly [Setting, Setting] {
  const side = (key: 'width' | 'height', label: string): Setting => ({
    key: `sensor ${key}`,
    label,
    measure: 'millimetres',
    bounds: LIMITS.sensor,
    value: device.sensor[key],
    change: (plan, value) => setSensor(plan, id, { sensor: { [key]: value } }),
  });
  return [side('width', 'Sensor width'), side('height', 'Sensor height')];
}

/** Pixels across and down of the recorded picture. */
export function pixelSettings({ id, device }: PlanCamera): readonly [Setting, Setting] {
  const mode = device.modes.find((one) => one.id === device.recorded);
  const side = (key: 'width' | 'height', label: string): Setting => ({
    key: `pixels ${key}`,
    label,
    measure: 'pixels',
    bounds: LIMITS.pixels,
    value: mode?.frame[key] ?? 0,
    change: (plan, value) => setSensor(plan, id, { frame: { [key]: value } }),
  });
  return [side('width', 'Pixels across'), side('height', 'Pixels down')];
}

/** Whether the lens has a range of focal lengths. */
export const isVarifocal = ({ shortest, longest }: Lens): boolean => shortest !== longest;

/** Focal lengths: one of a fixed lens, or both ends and the setting between them. */
export function focalSettings({ id, device: { lens } }: PlanCamera): readonly Setting[] {
  const focal = (
    key: string,
    label: string,
    value: number,
    bounds: Setting['bounds'],
    change: Setting['change'],
  ): Setting => ({
    key,
    label,
    measure: 'millimetres',
    bounds,
    value,
    change,
  });
  const { least, most } = LIMITS.focalLength;
  const present = (bounds: Setting['bounds']) =>
    focal('focal length', 'Focal length', lens.focalLength, bounds, (plan, value) =>
      setLens(plan, id, { focalLength: value }),
    );
  if (!isVarifocal(lens)) return [present(LIMITS.focalLength)];
  const { shortest, longest, focalLength } = lens;
  // The ends stay a hundredth apart: a lens whose ends are one is a fixed one.
  return [
    present({ least: shortest, most: longest }),
    focal('shortest', 'Shortest', shortest, { least, most: longest - 0.01 }, (plan, value) =>
      setLens(plan, id, { shortest: value, focalLength: Math.max(value, focalLength) }),
    ),
    focal('longest', 'Longest', longest, { least: shortest + 0.01, most }, (plan, value) =>
      setLens(plan, id, { longest: value, focalLength: Math.min(value, focalLength) }),
    ),
  ];
}

/** The angles that the data sheet prints; none where the law follows from the focal length alone. */
export function statedAngleSettings({ id, device: { lens } }: PlanCamera): readonly Setting[] {
  const stated = lens.statedHfov;
  if (!stated) return [];
  const angle = (key: string, label: string, value: number, change: Setting['change']): Setting => ({
    key,
    label,
    measure: 'angle',
    bounds: LIMITS.angleOfView,
    value,
    change,
  });
  if (!isVarifocal(lens))
    return [
      angle('stated angle', 'Stated angle across', stated.atShortest, (plan, value) =>
        setLens(plan, id, { hfov: value }),
      ),
    ];
  return [
    angle('stated at shortest', `Stated angle at ${lens.shortest} mm`, stated.atShortest, (plan, value) =>
      setLens(plan, id, { statedHfov: { ...stated, atShortest: value } }),
    ),
    angle('stated at longest', `Stated angle at ${lens.longest} mm`, stated.atLongest, (plan, value) =>
      setLens(plan, id, { statedHfov: { ...stated, atLongest: value } }),
    ),
  ];
}

/** Makes a lens varifocal about its present setting, or fixed at it; the setting stays. */
export function setVarifocal(plan: Plan, { id, device: { lens } }: PlanCamera, varifocal: boolean): Plan {
  if (varifocal === isVarifocal(lens)) return plan;
  const { focalLength } = lens;
  if (varifocal)
    return setLens(plan, id, { shortest: focalLength, longest: focalLength * 3, statedHfov: null });
  return setLens(plan, id, { shortest: focalLength, longest: focalLength, statedHfov: null });
}

/**
 * States the data sheet's angle, first as the one that the lens has now; or takes it out, and the lens is rectilinear.
 * @param now present angle of view across the whole sensor, °
 */
export function setStated(plan: Plan, { id }: PlanCamera, stated: boolean, now: number | null): Plan {
  if (!stated) return setLens(plan, id, { statedHfov: null });
  const angle = Math.round((now ?? LIMITS.angleOfView.most / 4) * 10) / 10;
  return setLens(plan, id, { statedHfov: { atShortest: angle, atLongest: angle } });
}

/** Gives the sensor the active area that goes by a type number. */
export const setSensorType = (plan: Plan, { id }: PlanCamera, { width, height }: Extent): Plan =>
  setSensor(plan, id, { sensor: { width, height } });
