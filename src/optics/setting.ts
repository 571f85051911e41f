import type { Fault } from '../base/fault.ts';
import type { Camera, Extent } from './camera.ts';
import type { Device, Lens } from './device.ts';
import { angleOfView, solveK } from './lens.ts';

/** What of a device the engine needs: the recorded picture's part of the sensor, its pixels, and the lens as set. */
export type Setting = Pick<Camera, 'sensor' | 'frame' | 'focalLength' | 'k'>;

/**
 * A device as it records: crop and pixels of the recorded mode, the law from the stated angles, between the ends of a
 * varifocal range in proportion to focal length.
 * @param subject name of the camera, for the faults
 * @returns       the setting, and a fault for each end of the lens whose stated angle no law gives
 */
export function settingOf(device: Device, subject: string): { setting: Setting; faults: readonly Fault[] } {
  const mode = device.modes.find(({ id }) => id === device.recorded);
  if (!mode)
    throw new Error(
      `no picture mode ${device.recorded} among ${device.modes.map(({ id }) => id).join(', ')}`,
    );
  const sensor: Extent = {
    width: device.sensor.width * mode.crop.width,
    height: device.sensor.height * mode.crop.height,
  };
  const { k, faults } = lawOf(device.lens, statedWidth(device), subject);
  return { setting: { sensor, frame: mode.frame, focalLength: device.lens.focalLength, k }, faults };
}

/** The width of sensor, mm, over which the stated angles of a device's lens hold: the whole, or that of the mode they are stated in. */
export function statedWidth({ sensor, modes, lens }: Device): number {
  const mode = modes.find(({ id }) => id === lens.statedIn);
  return sensor.width * (mode?.crop.width ?? 1);
}

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
