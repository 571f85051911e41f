import type { Plan } from '../plan.ts';

/** The plan with things out of their groups; a group that has nothing left in it goes. */
export function withoutMembers(plan: Plan, ids: readonly string[]): Plan {
  const isTouched = Object.values(plan.groups).some(({ members }) => members.some((id) => ids.includes(id)));
  if (!isTouched) return plan;
  const groups = Object.values(plan.groups).flatMap((group) => {
    const members = group.members.filter((id) => !ids.includes(id));
    if (members.length === 0) return [];
    return [members.length === group.members.length ? group : { ...group, members }];
  });
  const records = Object.fromEntries(groups.map((group) => [group.id, group]));
  return { ...plan, groups: records, groupOrder: plan.groupOrder.filter((id) => Object.hasOwn(records, id)) };
}
