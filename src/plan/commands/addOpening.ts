import { accept, type Outcome } from '../../base/fault.ts';
import type { Opening } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { addPart } from './addPart.ts';
import { admitted } from './admitted.ts';
import type { Added } from './addStructure.ts';

/** An opening that is in no wall yet. */
export type OpeningDraft = Omit<Opening, 'id' | 'name'> & { readonly name?: string };

const usualNames = { door: 'Door', window: 'Window', gate: 'Gate', archway: 'Archway' } as const;

/**
 * Puts an opening into a wall of a building, or into a barrier, under the name wanted or the next free one of its kind.
 * @param on id of the structure
 * @returns  refused where it does not fit
 * @throws   RangeError where the plan has no such structure, or it has no openings
 */
export function addOpening(plan: Plan, on: string, draft: OpeningDraft): Outcome<Added> {
  const { plan: next, id } = addPart(plan, on, draft.name ?? usualNames[draft.kind], (structure, named) => {
    if (!('openings' in structure)) throw new RangeError(`a ${structure.kind} has no openings`);
    return { ...structure, openings: [...structure.openings, { ...draft, ...named }] };
  });
  const checked = admitted(plan, next);
  return checked.ok ? accept({ plan: checked.value, id }) : checked;
}
