import { accept, type Outcome } from '../../base/fault.ts';
import type { Service } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { addPart } from './addPart.ts';
import { admitted } from './admitted.ts';
import type { Added } from './addStructure.ts';

/** A point on a wall that is on none yet. */
export type ServiceDraft = Omit<Service, 'id' | 'name'> & { readonly name?: string };

const usualNames = {
  socket: 'Socket',
  switch: 'Switch',
  light: 'Light',
  tap: 'Tap',
  meter: 'Meter',
  flue: 'Flue',
} as const;

/**
 * Marks a point on a wall of a building, under the name wanted or the next free one of its kind.
 * @param on id of the building
 * @returns  refused where the wall is not there or ends before it
 * @throws   RangeError where the plan has no such building
 */
export function addService(plan: Plan, on: string, draft: ServiceDraft): Outcome<Added> {
  const { plan: next, id } = addPart(plan, on, draft.name ?? usualNames[draft.kind], (structure, named) => {
    if (structure.kind !== 'building') throw new RangeError(`a ${structure.kind} has no points on walls`);
    return { ...structure, services: [...structure.services, { ...draft, ...named }] };
  });
  const checked = admitted(plan, next);
  return checked.ok ? accept({ plan: checked.value, id }) : checked;
}
