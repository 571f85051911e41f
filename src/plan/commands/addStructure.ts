import { accept, type Outcome } from '../../base/fault.ts';
import type { Structure } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { carried } from '../reshape/carried.ts';
import { chainOf } from '../reshape/chainOf.ts';
import { alike, isClockwise, turnedRound } from '../reshape/reshaped.ts';
import { admitted } from './admitted.ts';
import { freshId, takenIds } from './freshId.ts';
import { freshName, takenNames, usualName } from './freshName.ts';

/** A new thing and the plan that it is in. */
export interface Added {
  readonly plan: Plan;
  readonly id: string;
}

type DraftOf<S> = S extends Structure
  ? Omit<S, 'id' | 'name' | 'hidden' | 'locked'> & { readonly name?: string }
  : never;

/** A structure that is not in a plan yet. */
export type StructureDraft = DraftOf<Structure>;

/**
 * Puts a structure into the plan, last in order, under the name wanted or the next free one of its kind. An outline that was
 * drawn clockwise is turned round; its first corner stays the first. Openings and points on walls keep the ids they bring,
 * which must be free.
 * @returns refused where it cannot be built as drawn
 */
export function addStructure(plan: Plan, draft: StructureDraft): Outcome<Added> {
  const name = freshName(draft.name ?? usualName(draft), takenNames(plan));
  const id = freshId(takenIds(plan), idStem(name));
  const structure: Structure = { ...draft, id, name, hidden: false, locked: false };
  const next: Plan = {
    ...plan,
    structures: { ...plan.structures, [id]: structure },
    structureOrder: [...plan.structureOrder, id],
  };
  const turned = roundTheRightWay(next, structure);
  if (!turned.ok) return turned;
  const checked = admitted(plan, turned.value);
  return checked.ok ? accept({ plan: checked.value, id }) : checked;
}

function roundTheRightWay(plan: Plan, structure: Structure): Outcome<Plan> {
  const chain = chainOf(structure);
  if (!chain || structure.kind === 'barrier' || !isClockwise(chain.corners)) return accept(plan);
  return carried(plan, structure, turnedRound(alike(chain, chain.corners)));
}

/** What ids of things of this name begin with: "Back fence" gives `back-fence-`. */
export function idStem(name: string): string {
  const plain = name
    .normalize('NFD')
    .toLowerCase()
    .replace(/ \d+$/, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  return plain === '' ? 'thing-' : `${plain}-`;
}
