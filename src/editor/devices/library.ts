import table from '../../../shared/tables/devices.json';
import type { DeviceEntry } from '../../plan/devices/deviceEntry.ts';
import { devicesFrom } from '../../plan/devices/devicesFile.ts';

/**
 * Kinds of cameras that anyone may begin with: invented sheets of common kinds, no maker's.
 * @throws Error where the table in the house cannot be read, which a test holds
 */
export function library(): readonly DeviceEntry[] {
  const read = devicesFrom(table);
  if (!read.ok)
    throw new Error(
      `devices.json: ${read.faults.map(({ code, path }) => `${code} ${path.join('.')}`).join(', ')}`,
    );
  return read.value;
}
