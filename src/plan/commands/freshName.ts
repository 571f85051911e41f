import type { Structure } from '../../model/structure.ts';
import { NAME_LENGTH } from '../limits.ts';
import type { Plan } from '../plan.ts';
import { cleanName } from './renameThing.ts';

/** Every name that something of the plan has. */
export const takenNames = (plan: Plan): Set<string> =>
  new Set([
    ...[
      plan.structures,
      plan.cameras,
      plan.patches,
      plan.lamps,
      plan.requirements,
      plan.situations,
      plan.groups,
      plan.pictures,
    ].flatMap((records) => Object.values<{ readonly name: string }>(records).map(({ name }) => name)),
    ...Object.values(plan.structures).flatMap((structure) => [
      ...('openings' in structure ? structure.openings.map(({ name }) => name) : []),
      ...('services' in structure ? structure.services.map(({ name }) => name) : []),
    ]),
  ]);

/**
 * A name that nothing of the plan has: the one wanted, or that with the next free number: "Garage", "Garage 2".
 * @param taken names that are given away already
 */
export function freshName(wanted: string, taken: ReadonlySet<string>): string {
  const name = cleanName(wanted) || 'Thing';
  if (!taken.has(name)) return name;
  // "Garage 2" goes on with "Garage 3", "C1" with "C2".
  const mark = /^[A-Za-z]+\d+$/.test(name) ? '' : ' ';
  const stem = name.replace(mark === '' ? /\d+$/ : / \d+$/, '').slice(0, NAME_LENGTH - 7);
  let number = 2;
  while (taken.has(`${stem.trimEnd()}${mark}${number}`)) number += 1;
  return `${stem.trimEnd()}${mark}${number}`;
}

/** What a structure is called while nobody says otherwise. */
export function usualName(structure: { readonly kind: Structure['kind']; readonly sort?: string }): string {
  switch (structure.kind) {
    case 'building':
      return 'House';
    case 'barrier':
      return { wall: 'Wall', fence: 'Fence', hedge: 'Hedge' }[structure.sort ?? ''] ?? 'Wall';
    case 'canopy':
      return 'Canopy';
    case 'tree':
      return 'Tree';
    case 'vehicle':
      return structure.sort === 'van' ? 'Van' : 'Car';
    case 'block':
      return 'Block';
  }
}
