import type { Plan } from '../plan.ts';

/** Every id that a new thing may not take: whatever has one, and `boundary`, by which the site boundary goes. */
export const takenIds = (plan: Plan): Set<string> =>
  new Set([
    ...Object.keys(plan.structures),
    ...Object.keys(plan.cameras),
    ...Object.keys(plan.patches),
    ...Object.keys(plan.lamps),
    ...Object.keys(plan.requirements),
    ...Object.keys(plan.situations),
    ...Object.keys(plan.groups),
    ...Object.keys(plan.pictures),
    ...Object.values(plan.structures).flatMap((structure) => [
      ...('openings' in structure ? structure.openings.map(({ id }) => id) : []),
      ...('services' in structure ? structure.services.map(({ id }) => id) : []),
    ]),
    'boundary',
  ]);

/** The first of prefix1, prefix2 … that is free. */
export function freshId(taken: ReadonlySet<string>, prefix: string): string {
  let number = 1;
  while (taken.has(`${prefix}${number}`)) number += 1;
  return `${prefix}${number}`;
}
