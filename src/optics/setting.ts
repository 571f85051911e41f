import type { Fault } from '../base/fault.ts';
import type { Camera, Extent } from './camera.ts';
import type { Device, Lens, PictureMode } from './device.ts';
import { angleOfView, solveK } from './lens.ts';

/** What of a device the engine needs: the recorded picture's part of the sensor, its pixels, and the lens as set. */
export type Setting = Pick<Camera, 'sensor' | 'frame' | 'focalLength' | 'k'>;

/** The mode that is recorded. @throws Error where the device names none of its own, which no plan that was read does */
export function recordedMode(device: Device): PictureMode {
  const mode = device.modes.find(({ id }) => id === device.recorded);
  if (!mode)
    throw new Error(
      `no picture mode ${device.recorded} among ${device.modes.map(({ id }) => id).join(', ')}`,
    );
  return mode;
}

/**
 * The part of a sensor that a picture uses, mm, as the picture stands: a rotated one is given upright, so that its width
 * lies along the height of the sensor.
 */
export function pictureSensor({ sensor }: Device, { crop, use }: PictureMode): Extent {
  const [width, height] = [sensor.width * crop.width, sensor.height * crop.height];
  return use === 'rotated' ? { width: height, height: width } : { width, height };
}

/**
 * How far the recorded picture is rolled, °, for a camera that is. One in the corridor format lies on its side (90 or −90)
 * and gives a picture that is turned back, which stands upright: the law is the same all round, so that it is the picture
 * of a camera with sides exchanged.
 */
export function pictureRoll(device: Device, roll: number): number {
  if (recordedMode(device).use !== 'rotated') return roll;
  return roll < 0 ? roll + 90 : roll - 90;
}

/**
 * A device as it records: crop and pixels of the recorded mode, the law from the stated angles, between the ends of a
 * varifocal range in proportion to focal length.
 * @param subject name of the camera, for the faults
 * @returns       the setting, and a fault for each end of the lens whose stated angle no law gives
 */
export function settingOf(device: Device, subject: string): { setting: Setting; faults: readonly Fault[] } {
  const mode = recordedMode(device);
  const sensor = pictureSensor(device, mode);
  const { k, faults } = lawOf(device.lens, statedWidth(device), subject);
  return { setting: { sensor, frame: mode.frame, focalLength: device.lens.focalLength, k }, faults };
}

/** The crop for which the angles of a device's lens are stated; the whole sensor, unless it names a mode. */
const statedCrop = ({ modes, lens }: Device): { readonly width: number; readonly height: number } =>
  modes.find(({ id }) => id === lens.statedIn)?.crop ?? { width: 1, height: 1 };

/** The width of sensor, mm, over which the stated horizontal angles of a device's lens hold. */
export const statedWidth = (device: Device): number => device.sensor.width * statedCrop(device).width;

/** The height likewise, for the vertical ones. */
export const statedHeight = (device: Device): number => device.sensor.height * statedCrop(device).height;

/** The law of a lens as set, from its stated angles over a width of the sensor (mm). */
export function lawOf(lens: Lens, width: number, subject: string): { k: number; faults: readonly Fault[] } {
  const { shortest, longest, focalLength, statedHfov, law } = lens;
  if (law !== undefined) return { k: law, faults: [] };
  if (statedHfov === null) return { k: 1, faults: [] };
  const faults: Fault[] = [];
  const at = (focal: number, hfov: number): number => {
    const found = solveK(focal, hfov, width);
    if (!found.consistent)
      faults.push({
        code: 'lens.inconsistent',
        path: ['statedHfov'],
        given: `${focal} mm with ${hfov}°`,
        allowed: `${found.nearestFocalLength.toFixed(2)} mm`,
        subject,
      });
    return found.k;
  };
  const near = at(shortest, statedHfov.atShortest);
  if (longest <= shortest) return { k: near, faults };
  const far = at(longest, statedHfov.atLongest);
  const share = (focalLength - shortest) / (longest - shortest);
  return { k: near + (far - near) * Math.min(1, Math.max(0, share)), faults };
}

/** Angles of view of a recorded picture, °; null where the lens law ends inside the sensor. */
export const anglesOf = (
  setting: Setting,
): { readonly horizontal: number | null; readonly vertical: number | null } => ({
  horizontal: angleOfView(setting.focalLength, setting.k, setting.sensor.width),
  vertical: angleOfView(setting.focalLength, setting.k, setting.sensor.height),
});
