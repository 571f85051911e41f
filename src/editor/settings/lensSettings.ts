import type { Extent } from '../../optics/camera.ts';
import type { Lens, StatedAngles } from '../../optics/device.ts';
import { angleOfView } from '../../optics/lens.ts';
import { lawOf, statedHeight, statedWidth } from '../../optics/setting.ts';
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

/**
 * The angles that the data sheet prints, across and up and down, at each end of the lens; none where the law follows from the
 * focal length alone. @param way which of the two
 */
export function statedAngleSettings(
  { id, device: { lens } }: PlanCamera,
  way: 'across' | 'down' = 'across',
): readonly Setting[] {
  const key = way === 'across' ? 'statedHfov' : 'statedVfov';
  const stated = lens[key];
  if (!stated) return [];
  const name = way === 'across' ? 'Stated angle across' : 'Stated angle up and down';
  const of = way === 'across' ? 'stated' : 'stated vertical';
  const angle = (end: keyof StatedAngles, label: string, also: Partial<StatedAngles>): Setting => ({
    key: `${of} ${end === 'atShortest' ? 'at shortest' : 'at longest'}`,
    label,
    measure: 'angle',
    bounds: LIMITS.angleOfView,
    value: stated[end],
    change: (plan, value) => setLens(plan, id, { [key]: { ...stated, ...also, [end]: value } }),
  });
  if (!isVarifocal(lens)) {
    const only = angle('atShortest', name, {});
    return [
      {
        ...only,
        key: `${of} angle`,
        change: (plan, value) => setLens(plan, id, { [key]: { atShortest: value, atLongest: value } }),
      },
    ];
  }
  return [
    angle('atShortest', `${name} at ${lens.shortest} mm`, {}),
    angle('atLongest', `${name} at ${lens.longest} mm`, {}),
  ];
}

const UNSTATED = { statedHfov: null, statedVfov: null } as const;

/** Makes a lens varifocal about its present setting, or fixed at it; the setting stays. */
export function setVarifocal(plan: Plan, { id, device: { lens } }: PlanCamera, varifocal: boolean): Plan {
  if (varifocal === isVarifocal(lens)) return plan;
  const { focalLength } = lens;
  if (varifocal) return setLens(plan, id, { shortest: focalLength, longest: focalLength * 3, ...UNSTATED });
  return setLens(plan, id, { shortest: focalLength, longest: focalLength, ...UNSTATED });
}

/**
 * States the data sheet's angle across or up and down, first as the lens has it now at its two ends; or takes it out. Without
 * the one across the lens is rectilinear.
 * @param now present angle of view, °, at the shortest and the longest focal length
 */
export function setStated(
  plan: Plan,
  { id }: PlanCamera,
  stated: boolean,
  now: readonly [shortest: number | null, longest: number | null],
  way: 'across' | 'down' = 'across',
): Plan {
  const key = way === 'across' ? 'statedHfov' : 'statedVfov';
  if (!stated) return setLens(plan, id, { [key]: null });
  const [atShortest, atLongest] = now.map(
    (angle) => Math.round((angle ?? LIMITS.angleOfView.most / 4) * 10) / 10,
  );
  return atShortest === undefined || atLongest === undefined
    ? plan
    : setLens(plan, id, { [key]: { atShortest, atLongest } });
}

/** Angles across and up and down at both ends of a camera's lens over what its sheet states them for, °. */
export function endAngles(
  { device, name }: PlanCamera,
  way: 'across' | 'down',
): [number | null, number | null] {
  const { lens } = device;
  const side = way === 'across' ? statedWidth(device) : statedHeight(device);
  const at = (focalLength: number): number | null => {
    const { k } = lawOf({ ...lens, focalLength }, statedWidth(device), name);
    return angleOfView(focalLength, k, side);
  };
  return [at(lens.shortest), at(lens.longest)];
}

/** Gives the sensor the active area that goes by a type number. */
export const setSensorType = (plan: Plan, { id }: PlanCamera, { width, height }: Extent): Plan =>
  setSensor(plan, id, { sensor: { width, height } });
