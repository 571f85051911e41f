import type { Fault } from '../base/fault.ts';
import { GREATEST_SPAN } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Structure } from '../model/structure.ts';
import type { Plan } from './plan.ts';

/** What is wrong with what the plan draws: structures that no site has room for. */
export function drawingFaults(plan: Plan): readonly Fault[] {
  return Object.values(plan.structures).flatMap((structure) => {
    const path = ['structures', structure.id];
    return spanFaults(structure.name, cornersOf(structure), path);
  });
}

const cornersOf = (structure: Structure): readonly Vec2[] => {
  if ('outline' in structure) return structure.outline;
  return 'line' in structure ? structure.line : [];
};

/** A fault where corners lie farther apart, east to west or south to north, than one structure may be wide. */
export function spanFaults(
  subject: string,
  corners: readonly Vec2[],
  path: readonly (string | number)[],
): readonly Fault[] {
  const span = Math.max(spread(corners.map(([x]) => x)), spread(corners.map(([, y]) => y)));
  if (span <= GREATEST_SPAN) return [];
  return [{ code: 'structure.vast', path, given: Math.round(span), allowed: String(GREATEST_SPAN), subject }];
}

function spread(values: readonly number[]): number {
  let least = Infinity;
  let most = -Infinity;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return most - least;
}
