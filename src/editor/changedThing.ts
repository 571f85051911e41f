import type { Plan } from '../plan/plan.ts';
import type { Selected } from './editor.ts';

/** The thing that a step changed or brought back, for the selection; null where it changed none, or took it away. */
export function whatChanged(before: Plan, after: Plan): Selected | null {
  const camera = changedKey(before.cameras, after.cameras);
  if (camera !== null) return { kind: 'camera', id: camera };
  const structure = changedKey(before.structures, after.structures);
  if (structure !== null) return { kind: 'structure', id: structure };
  const lamp = changedKey(before.lamps, after.lamps);
  if (lamp !== null) return { kind: 'lamp', id: lamp };
  const situation = changedKey(before.situations, after.situations);
  if (situation !== null) return { kind: 'situation', id: situation };
  return before.boundary !== after.boundary && after.boundary ? { kind: 'boundary' } : null;
}

const changedKey = <T>(
  before: Readonly<Record<string, T>>,
  after: Readonly<Record<string, T>>,
): string | null =>
  before === after ? null : (Object.keys(after).find((key) => before[key] !== after[key]) ?? null);
