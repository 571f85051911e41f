import type { Fault } from '../base/fault.ts';
import { GREATEST_SPAN } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import { barrierLine } from '../model/barrierLine.ts';
import { validFootprint } from '../model/footprint.ts';
import type { Ring, Structure } from '../model/structure.ts';
import type { Patch, Plan } from './plan.ts';

/** What of a plan's drawing nobody can build: outlines that cross themselves, structures that no site has room for. */
export function drawingFaults(plan: Plan): readonly Fault[] {
  return [
    ...Object.values(plan.structures).flatMap(structureFaults),
    ...Object.values(plan.patches).flatMap(patchFaults),
    ...(plan.boundary ? boundaryFaults(plan.boundary) : []),
  ];
}

/** What of one structure's outline or line nobody can build. */
export function structureFaults(structure: Structure): readonly Fault[] {
  const path = ['structures', structure.id];
  const vast = spanFaults(structure.name, cornersOf(structure), path);
  return vast.length > 0
    ? vast
    : outlineFaults(structure).map((fault) => ({ ...fault, path: [...path, ...fault.path] }));
}

/** What of a patch's outline is no patch of ground. */
export function patchFaults({ id, name, outline }: Patch): readonly Fault[] {
  const path = ['patches', id];
  const vast = spanFaults(name, outline, path);
  return vast.length > 0 ? vast : ringFaults(outline, name, [...path, 'outline']);
}

/** What of the site boundary encloses no site. */
export const boundaryFaults = (boundary: Ring): readonly Fault[] =>
  ringFaults(boundary, 'Site boundary', ['boundary']);

/** What is wrong with a ring that stands by itself. */
function ringFaults(ring: Ring, name: string, path: readonly string[]): readonly Fault[] {
  const built = validFootprint(ring, [], name);
  return built.ok ? [] : built.faults.map((fault) => ({ ...fault, path: [...path, ...fault.path.slice(1)] }));
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
