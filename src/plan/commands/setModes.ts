import { accept, type Outcome } from '../../base/fault.ts';
import type { Device, PictureMode, PictureUse } from '../../optics/device.ts';
import type { Plan } from '../plan.ts';
import { turnCamera } from './aimWithin.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/** What a new mode is called, by its use. */
const NAMES: Readonly<Record<PictureUse, string>> = {
  recorded: 'Main stream',
  live: 'Small stream',
  rotated: 'On its side',
  stabilised: 'Stabilised',
  other: 'Another picture',
};

/** Of a small stream, as share of the pixels each way; and of what stabilising leaves of each side. Common practice, no source. */
const SMALL = 0.25;
const STEADY = 0.9;

/**
 * Changes a picture mode of a camera.
 * @throws RangeError on an unknown camera or mode
 */
export const setMode = (
  plan: Plan,
  id: string,
  mode: string,
  change: Partial<Omit<PictureMode, 'id'>>,
): Plan =>
  withDevice(plan, id, (device) => {
    known(device, mode);
    const modes = device.modes.map((one) => (one.id === mode ? changed(one, change) : one));
    return modes.every((one, index) => one === device.modes[index]) ? device : { ...device, modes };
  });

/** Judges bands in another picture mode. @throws RangeError on an unknown camera or mode */
export const recordMode = (plan: Plan, id: string, mode: string): Plan =>
  withDevice(plan, id, (device) => changed(device, { recorded: known(device, mode).id }));

/**
 * Adds a picture mode of a use, made from the recorded one: a quarter of its pixels for a small stream, its sides exchanged
 * for one on its side, less of the sensor for a stabilised one. How much less is a guess until the person says.
 * @throws RangeError on an unknown camera
 */
export const addMode = (plan: Plan, id: string, use: PictureUse): Plan =>
  withDevice(plan, id, (device) => ({ ...device, modes: [...device.modes, modeOf(device, use)] }));

/**
 * Takes a picture mode away, unless it is recorded.
 * @throws RangeError on an unknown camera or mode, or the recorded one
 */
export const removeMode = (plan: Plan, id: string, mode: string): Plan =>
  withDevice(plan, id, (device) => {
    if (known(device, mode).id === device.recorded) throw new RangeError(`the recorded mode ${mode} stays`);
    const { lens } = device;
    return {
      ...device,
      modes: device.modes.filter((one) => one.id !== mode),
      lens: changed(lens, { statedIn: lens.statedIn === mode ? null : lens.statedIn }),
    };
  });

/**
 * Turns a camera on its side with its picture turned back upright, which is taller than wide, or back again: roll and recorded
 * mode in one.
 * @returns refused where the mount does not turn so far
 * @throws  RangeError on an unknown camera
 */
export function setCorridor(plan: Plan, id: string, on: boolean): Outcome<Plan> {
  const device = Object.hasOwn(plan.cameras, id) ? plan.cameras[id]?.device : undefined;
  if (!device) throw new RangeError(`the plan has no camera ${id}`);
  const isOn = isCorridor(device);
  if (on === isOn) return accept(plan);
  const turned = turnCamera(plan, id, { roll: on ? 90 : 0 });
  if (!turned.ok) return turned;
  const wanted = on
    ? device.modes.find(({ use }) => use === 'rotated')
    : (device.modes.find(({ use }) => use === 'recorded') ??
      device.modes.find(({ use }) => use !== 'rotated'));
  if (wanted) return accept(recordMode(turned.value, id, wanted.id));
  const made = modeOf(device, on ? 'rotated' : 'recorded');
  return accept(
    withDevice(turned.value, id, (now) => ({ ...now, modes: [...now.modes, made], recorded: made.id })),
  );
}

/** Whether the recorded picture is one that is turned upright. */
export const isCorridor = (device: Device): boolean =>
  device.modes.find(({ id }) => id === device.recorded)?.use === 'rotated';

function modeOf(device: Device, use: PictureUse): PictureMode {
  const from = known(device, device.recorded);
  const { frame } = from;
  const ids = new Set(device.modes.map(({ id }) => id));
  let id: string = use;
  for (let k = 2; ids.has(id); k++) id = `${use}-${k}`;
  const even = (pixels: number): number => Math.max(16, 2 * Math.round(pixels / 2));
  const isAcross = (use === 'rotated') === (from.use === 'rotated');
  const own = isAcross ? frame : { width: frame.height, height: frame.width };
  const kept = use === 'stabilised' ? STEADY : 1;
  const { width, height } = from.crop;
  const [w, h] = [width * kept, height * kept];
  return {
    id,
    name: NAMES[use],
    use,
    frame: use === 'live' ? { width: even(own.width * SMALL), height: even(own.height * SMALL) } : own,
    crop: { x: (1 - w) / 2, y: (1 - h) / 2, width: w, height: h },
    cropKnown: use === 'stabilised' ? false : from.cropKnown,
  };
}

function withDevice(plan: Plan, id: string, change: (device: Device) => Device): Plan {
  return withCamera(plan, id, (camera) => changed(camera, { device: change(camera.device) }));
}

function known(device: Device, mode: string): PictureMode {
  const found = device.modes.find(({ id }) => id === mode);
  if (!found) throw new RangeError(`no picture mode ${mode}`);
  return found;
}
