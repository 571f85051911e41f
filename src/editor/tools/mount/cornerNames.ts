import type { HostFace } from '../../../model/face.ts';

const NAMES = [
  'north',
  'north-east',
  'east',
  'south-east',
  'south',
  'south-west',
  'west',
  'north-west',
] as const;

/** What the two ends of a face are called: "west" and "east" on a south wall. */
export function cornerNames({ along }: Pick<HostFace, 'along'>): {
  readonly start: string;
  readonly end: string;
} {
  const bearing = (Math.atan2(along[0], along[1]) * 180) / Math.PI;
  const name = (towards: number): string => NAMES[((Math.round(towards / 45) % 8) + 8) % 8] ?? 'north';
  return { start: name(bearing + 180), end: name(bearing) };
}
