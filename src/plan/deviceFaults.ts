import type { Fault } from '../base/fault.ts';
import type { Device } from '../optics/device.ts';
import { listed } from './shapeFaults.ts';

/**
 * What one part of a device says of another: modes told apart, named ones there, crops within the sensor, the lens set within
 * its range.
 * @param name of the camera or device
 * @param path the way to the device
 */
export function deviceFaults(
  device: Device,
  name: string,
  path: readonly (string | number)[],
): readonly Fault[] {
  const faults: Fault[] = [];
  const ids = device.modes.map((mode) => mode.id);
  ids.forEach((modeId, index) => {
    if (ids.indexOf(modeId) < index)
      faults.push({
        code: 'mode.twice',
        path: [...path, 'modes', index, 'id'],
        given: modeId,
        subject: name,
      });
  });
  if (!ids.includes(device.recorded))
    faults.push({
      code: 'mode.missing',
      path: [...path, 'recorded'],
      given: device.recorded,
      allowed: listed(ids),
      subject: name,
    });
  const { statedIn } = device.lens;
  if (statedIn !== null && !ids.includes(statedIn))
    faults.push({
      code: 'mode.missing',
      path: [...path, 'lens', 'statedIn'],
      given: statedIn,
      allowed: listed(ids),
      subject: name,
    });
  device.modes.forEach(({ crop }, index) => {
    // Shares written with a few decimals may add up to a hair more than the whole.
    if (crop.x + crop.width > 1 + 1e-9 || crop.y + crop.height > 1 + 1e-9)
      faults.push({ code: 'mode.crop', path: [...path, 'modes', index, 'crop'], subject: name });
  });
  const { shortest, longest, focalLength } = device.lens;
  if (shortest > longest)
    faults.push({
      code: 'sheet.reversed',
      path: [...path, 'lens'],
      given: `${shortest} to ${longest} mm`,
      allowed: `${longest} to ${shortest} mm`,
      subject: name,
    });
  else if (shortest > focalLength || focalLength > longest)
    faults.push({
      code: 'lens.range',
      path: [...path, 'lens', 'focalLength'],
      given: focalLength,
      allowed: `${shortest} to ${longest} mm`,
      subject: name,
    });
  return faults;
}
