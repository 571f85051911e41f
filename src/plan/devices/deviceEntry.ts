import type { DataSheet, Device, Housing } from '../../optics/device.ts';
import type { Infrared } from '../../optics/light.ts';
import type { MountLimits } from '../../optics/mount.ts';
import type { Exposure } from '../plan.ts';

/** A kind of camera as its data sheet describes it, to be put up anywhere. */
export interface DeviceEntry {
  readonly id: string;
  readonly name: string;
  /** Where its numbers come from: "common practice, no source", or the sheet that they were read from. */
  readonly basis: string;
  readonly housing: Housing | null;
  readonly device: Device;
  readonly sheet: Omit<DataSheet, 'name'>;
  readonly infrared: Infrared | null;
  readonly exposure: Exposure | null;
  /** How far it turns on a wall, a pole or a corner, and hanging below a board. */
  readonly limits: { readonly wall: MountLimits; readonly below: MountLimits };
}
