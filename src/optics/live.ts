import type { Device, PictureMode } from './device.ts';
import { pictureSensor, recordedMode } from './setting.ts';

/** Two shares that differ by less are one number for the person. */
const SAME = 0.01;

/** A picture beside the recorded one: what becomes of pixels per metre in it. */
export interface Beside {
  readonly mode: PictureMode;
  /** Its density over that of the recorded picture, wherever both show a place. */
  readonly share: number;
  /** False: it differs across and down, and `share` is the lesser. */
  readonly even: boolean;
}

/**
 * The live picture of a device; null where it has none beside the recorded one. Both look through one lens, so that their
 * densities differ by their pixels per millimetre of sensor alone, at every place alike.
 */
export function liveBeside(device: Device): Beside | null {
  const recorded = recordedMode(device);
  const mode = device.modes.find(({ use, id }) => use === 'live' && id !== recorded.id);
  if (!mode) return null;
  const [one, other] = [pitchOf(device, mode), pitchOf(device, recorded)];
  const [across, down] = [one.across / other.across, one.down / other.down];
  return { mode, share: Math.min(across, down), even: Math.abs(across / down - 1) < SAME };
}

/** Pixels per millimetre along the width and the height of the sensor itself. */
function pitchOf(device: Device, mode: PictureMode): { readonly across: number; readonly down: number } {
  const { width, height } = pictureSensor(device, mode);
  const [u, v] = [mode.frame.width / width, mode.frame.height / height];
  return mode.use === 'rotated' ? { across: v, down: u } : { across: u, down: v };
}
