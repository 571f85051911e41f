import type { Group, Plan } from '../plan.ts';
import type { Added } from './addStructure.ts';
import { freshId, takenIds } from './freshId.ts';
import { freshName, takenNames } from './freshName.ts';
import { withoutRecord } from './withRecord.ts';
import { withoutMembers } from './withoutMembers.ts';

/**
 * Binds structures, cameras and lamps together, under the name wanted or "Group". What is in another group leaves it.
 * @throws RangeError on no members, or where the plan has no such thing
 */
export function addGroup(plan: Plan, ids: readonly string[], wanted = 'Group'): Added {
  const members = [...new Set(ids)];
  if (members.length === 0) throw new RangeError('a group needs something in it');
  for (const id of members)
    if (![plan.structures, plan.cameras, plan.lamps].some((records) => Object.hasOwn(records, id)))
      throw new RangeError(`the plan has no structure, camera or lamp ${id}`);
  const next = withoutMembers(plan, members);
  const id = freshId(takenIds(plan), 'group-');
  const group: Group = { id, name: freshName(wanted, takenNames(next)), members };
  return {
    id,
    plan: {
      ...next,
      groups: { ...next.groups, [id]: group },
      groupOrder: [...next.groupOrder, id],
    },
  };
}

/**
 * Takes the bond from a group; its things stay.
 * @throws RangeError where the plan has no such group
 */
export function ungroup(plan: Plan, id: string): Plan {
  if (!Object.hasOwn(plan.groups, id)) throw new RangeError(`the plan has no group ${id}`);
  return {
    ...plan,
    groups: withoutRecord(plan.groups, id),
    groupOrder: plan.groupOrder.filter((other) => other !== id),
  };
}

/** The group that a thing is in; null: none. */
export const groupOf = (plan: Plan, id: string): Group | null =>
  Object.values(plan.groups).find(({ members }) => members.includes(id)) ?? null;

/** Ids and those that are in a group with one of them, each once: what is selected when one of a group is. */
export const withGroups = (plan: Plan, ids: readonly string[]): readonly string[] => [
  ...new Set(ids.flatMap((id) => [id, ...(groupOf(plan, id)?.members ?? [])])),
];
