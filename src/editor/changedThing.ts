import type { Plan } from '../plan/plan.ts';
import type { Selected } from './editor.ts';

/** The thing that a step changed or brought back, for the selection; null where it changed none, or took it away. */
export function whatChanged(before: Plan, after: Plan): Selected | null {
  const camera = changedKey(before.cameras, after.cameras);
  if (camera !== null) return { kind: 'camera', id: camera };
  const structure = changedKey(before.structures, after.structures);
  if (structure !== null) return { kind: 'structure', id: structure };
  return before.boundary !== after.boundary && after.boundary ? { kind: 'boundary' } : null;
}

const changedKey = <T>(
  before: Readonly<Record<string, T>>,
  after: Readonly<Record<string, T>>,
): string | null =>
  before === after ? null : (Object.keys(after).find((key) => before[key] !== after[key]) ?? null);
