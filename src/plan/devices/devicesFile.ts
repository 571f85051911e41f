import { accept, refuse, type Fault, type Outcome } from '../../base/fault.ts';
import { device, exposure, housing, infrared, limits, sheet } from '../cameraSchema.ts';
import { deviceFaults } from '../deviceFaults.ts';
import { jsonFault } from '../jsonFault.ts';
import { credit, id, name } from '../schemaParts.ts';
import { shapeFaults } from '../shapeFaults.ts';
import { z } from '../zod.ts';
import type { DeviceEntry } from './deviceEntry.ts';

/** What a file of devices says that it is. */
const FORMAT = 'soffit devices';

const entrySchema = z
  .strictObject({
    id,
    name,
    basis: credit.describe('Where its numbers come from'),
    housing,
    device,
    sheet: sheet.omit({ name: true }),
    infrared: infrared.describe('Its own light; null: none'),
    exposure,
    limits: z
      .strictObject({ wall: limits, below: limits })
      .describe('How far it turns on a wall or pole, and hanging below a board'),
  })
  .meta({ id: 'deviceEntry' });

export const devicesSchema = z
  .strictObject({ format: z.literal(FORMAT), version: z.literal(1), devices: z.array(entrySchema).max(1000) })
  .meta({
    title: 'Soffit devices',
    description: 'Kinds of cameras by their data sheets. Lens and sensor in millimetres, angles in degrees.',
  });

/** The published JSON Schema of a file of devices, as data. */
export const devicesJsonSchema = (): unknown => z.toJSONSchema(devicesSchema, { target: 'draft-2020-12' });

/**
 * The devices in a file's text.
 * @returns every fault found, where there is one; nothing is thrown for any text
 */
export function readDevices(text: string): Outcome<readonly DeviceEntry[]> {
  const plain = text.replace(/^\uFEFF/, '');
  let file: unknown;
  try {
    file = JSON.parse(plain);
  } catch {
    return refuse(jsonFault(plain));
  }
  return devicesFrom(file);
}

/** The devices in parsed JSON. */
export function devicesFrom(file: unknown): Outcome<readonly DeviceEntry[]> {
  const parsed = devicesSchema.safeParse(file);
  if (!parsed.success) return refuse(...shapeFaults(parsed.error.issues, file).slice(0, 50));
  const { devices } = parsed.data;
  const ids = devices.map((entry) => entry.id);
  const faults = devices.flatMap((entry, index): readonly Fault[] => [
    ...(ids.indexOf(entry.id) < index
      ? [{ code: 'device.twice', path: ['devices', index, 'id'], given: entry.id, subject: entry.name }]
      : []),
    ...deviceFaults(entry.device, entry.name, ['devices', index, 'device']),
  ]);
  return faults.length > 0 ? refuse(...faults) : accept(devices);
}

/** Devices as their file. */
export const devicesText = (devices: readonly DeviceEntry[]): string =>
  `${JSON.stringify({ format: FORMAT, version: 1, devices }, null, 2)}\n`;
