import type { Fault } from '../base/fault.ts';
import { GREATEST_SPAN } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import { barrierLine } from '../model/barrierLine.ts';
import { validFootprint } from '../model/footprint.ts';
import type { Structure } from '../model/structure.ts';
import type { Plan } from './plan.ts';

/** What of a plan's drawing nobody can build: outlines that cross themselves, structures that no site has room for. */
export function drawingFaults(plan: Plan): readonly Fault[] {
  const faults = Object.values(plan.structures).flatMap((structure) => {
    const path = ['structures', structure.id];
    const vast = spanFaults(structure.name, cornersOf(structure), path);
    return vast.length > 0
      ? vast
      : outlineFaults(structure).map((fault) => ({ ...fault, path: [...path, ...fault.path] }));
  });
  if (!plan.boundary) return faults;
  const boundary = validFootprint(plan.boundary, [], 'Site boundary');
  return boundary.ok
    ? faults
    : [
        ...faults,
        ...boundary.faults.map((fault) => ({ ...fault, path: ['boundary', ...fault.path.slice(1)] })),
      ];
}

function outlineFaults(structure: Structure): readonly Fault[] {
  const built =
    structure.kind === 'barrier'
      ? barrierLine(structure)
      : 'outline' in structure
        ? validFootprint(
            structure.outline,
            structure.kind === 'building' ? structure.holes : [],
            structure.name,
          )
        : null;
  return built === null || built.ok ? [] : built.faults;
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
