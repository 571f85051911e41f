import { Group } from 'lucide-react';
import type { TreeItem } from '../../fittings/treeItem.ts';
import type { Plan } from '../../plan/plan.ts';
import { leaf } from './leaf.ts';
import { placeRows } from './placeRows.tsx';
import { rowOf, rowOfGroup } from './rowIds.ts';
import { structureRows } from './structureRows.tsx';
import { cameraRow, lampRow, situationRows } from './thingRows.tsx';

/**
 * Every row of the Site that is to be seen, in order: what the site lies on, groups, structures, cameras, lamps and
 * conditions. `open` are the rows whose parts are shown.
 */
export function siteRows(plan: Plan, open: ReadonlySet<string>): readonly TreeItem[] {
  const grouped = new Set(Object.values(plan.groups).flatMap(({ members }) => members));
  const free = (ids: readonly string[]) => ids.filter((id) => !grouped.has(id));
  return [
    ...placeRows(plan),
    ...ruled(plan.groupOrder.flatMap((id) => groupRows(plan, id, open))),
    ...ruled(free(plan.structureOrder).flatMap((id) => memberRows(plan, id, 1, open))),
    ...ruled(free(plan.cameraOrder).flatMap((id) => memberRows(plan, id, 1, open))),
    ...ruled(free(plan.lampOrder).flatMap((id) => memberRows(plan, id, 1, open))),
    ...ruled(situationRows(plan)),
  ];
}

/** The first row of a part is ruled off from what is before it. */
const ruled = (rows: readonly TreeItem[]): readonly TreeItem[] =>
  rows.map((row, index) => (index === 0 ? { ...row, first: true } : row));

function groupRows(plan: Plan, id: string, open: ReadonlySet<string>): readonly TreeItem[] {
  const group = plan.groups[id];
  if (!group) return [];
  const row = rowOfGroup(id);
  const isOpen = open.has(row);
  const count = group.members.length;
  const things = count === 1 ? '1 thing' : `${count} things`;
  const head: TreeItem = {
    ...leaf(row, group.name, things, `${group.name}, group of ${things}`),
    open: isOpen,
    icon: <Group size={16} strokeWidth={1.6} />,
  };
  return isOpen ? [head, ...group.members.flatMap((member) => memberRows(plan, member, 2, open))] : [head];
}

function memberRows(plan: Plan, id: string, level: number, open: ReadonlySet<string>): readonly TreeItem[] {
  const structure = plan.structures[id];
  if (structure) return structureRows(structure, level, open.has(rowOf({ kind: 'structure', id })));
  const camera = plan.cameras[id];
  if (camera) return [cameraRow(plan, camera, level)];
  const lamp = plan.lamps[id];
  return lamp ? [lampRow(lamp, level)] : [];
}
