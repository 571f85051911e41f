import type { Vec3 } from '../base/vector.ts';
import { groundHeight } from '../model/ground.ts';
import { placeMount } from '../model/mounting.ts';
import { addGroup, groupOf, ungroup } from '../plan/commands/addGroup.ts';
import { deleteThings } from '../plan/commands/deleteThings.ts';
import { markThing } from '../plan/commands/markThing.ts';
import { reorder } from '../plan/commands/reorder.ts';
import type { Marked, Removable, Thing } from '../plan/commands/thing.ts';
import type { Plan } from '../plan/plan.ts';
import type { Editor, Selected } from './editor.ts';
import { expanded, isLocked, wordsFor } from './shaping/selection.ts';

/** What of a selection can be hidden and locked. */
const markedOf = (plan: Plan, selection: readonly Selected[]): readonly Marked[] =>
  expanded(plan, selection).flatMap((thing): Marked[] =>
    thing.kind === 'structure' || thing.kind === 'camera' || thing.kind === 'picture'
      ? [{ kind: thing.kind, id: thing.id }]
      : [],
  );

const markAll = (plan: Plan, things: readonly Marked[], marks: Parameters<typeof markThing>[2]): Plan =>
  things.reduce((next, thing) => markThing(next, thing, marks), plan);

/** Hides what is selected from the picture; shows it where all of it is hidden. It blocks views as before. */
export function hideSelected(editor: Editor, selection: readonly Selected[]): void {
  const { plan } = editor.store.getState();
  const things = markedOf(plan, selection);
  const hidden = !things.every((thing) => recordOf(plan, thing)?.hidden);
  editor.run(`${hidden ? 'Hide' : 'Show'} ${wordsFor(plan, selection)}`, (now) =>
    markAll(now, things, { hidden }),
  );
}

/** Shows everything that was hidden. */
export function showAll(editor: Editor): void {
  const { structures, cameras, pictures } = editor.store.getState().plan;
  const of = (kind: Marked['kind'], records: Readonly<Record<string, { readonly id: string }>>): Marked[] =>
    Object.values(records).map(({ id }) => ({ kind, id }));
  const all = [...of('structure', structures), ...of('camera', cameras), ...of('picture', pictures)];
  editor.run('Show all', (plan) => markAll(plan, all, { hidden: false }));
}

/** Locks what is selected, so that no drag moves it; frees it where all of it is locked. */
export function lockSelected(editor: Editor, selection: readonly Selected[]): void {
  const { plan } = editor.store.getState();
  const things = markedOf(plan, selection);
  if (things.length === 0) return;
  const locked = !things.every((thing) => recordOf(plan, thing)?.locked);
  const name = wordsFor(plan, selection);
  editor.run(`${locked ? 'Lock' : 'Free'} ${name}`, (now) => markAll(now, things, { locked }));
  editor.say(locked ? `${name}: locked.` : `${name}: free to move.`);
}

const recordOf = (plan: Plan, { kind, id }: Marked): { hidden: boolean; locked: boolean } | undefined =>
  ({ structure: plan.structures, camera: plan.cameras, picture: plan.pictures })[kind][id];

/** Takes what is selected out of the plan, but for what is locked; cameras on it stay where they are, fixed to nothing. */
export function deleteSelected(editor: Editor, selection: readonly Selected[]): void {
  const { plan } = editor.store.getState();
  const all = expanded(plan, selection);
  const things = all.filter((thing) => !isLocked(plan, thing));
  if (things.length < all.length) editor.say('What is locked stays. L frees it.');
  const removable = things.flatMap((thing): Removable[] => (thing.kind === 'ground' ? [] : [thing]));
  if (removable.length === 0) return;
  const name = wordsFor(plan, things.length === all.length ? selection : things);
  const eyes = eyesOf(plan);
  editor.run(`Delete ${name}`, (now) => deleteThings(now, removable, eyes));
  if (things.length === all.length) editor.say(`${name} is deleted. Undo brings it back.`);
}

/** Binds what is selected together, so that a click on one selects all. */
export function groupSelected(editor: Editor, selection: readonly Selected[]): void {
  const { plan } = editor.store.getState();
  const ids = expanded(plan, selection).flatMap((thing) =>
    thing.kind === 'structure' || thing.kind === 'camera' || thing.kind === 'lamp' ? [thing.id] : [],
  );
  if (ids.length < 2) return editor.say('A group needs two things. Shift and a press adds one.');
  editor.run(`Group ${wordsFor(plan, selection)}`, (now) => addGroup(now, ids).plan);
}

const groupsOf = (plan: Plan, selection: readonly Selected[]): ReadonlySet<string> =>
  new Set(
    expanded(plan, selection).flatMap((thing) => ('id' in thing ? (groupOf(plan, thing.id)?.id ?? []) : [])),
  );

/** Whether anything selected is in a group. */
export const isGrouped = (plan: Plan, selection: readonly Selected[]): boolean =>
  groupsOf(plan, selection).size > 0;

/** Takes the bond from the groups that what is selected is in. */
export function ungroupSelected(editor: Editor, selection: readonly Selected[]): void {
  const { plan } = editor.store.getState();
  const groups = groupsOf(plan, selection);
  if (groups.size === 0) return editor.say('Nothing selected is in a group.');
  editor.run(`Ungroup ${wordsFor(plan, selection)}`, (now) => [...groups].reduce(ungroup, now));
}

/** Puts what is selected one place on in the order of its kind, or one back. */
export function reorderSelected(editor: Editor, selected: Selected, by: 1 | -1): void {
  const { plan } = editor.store.getState();
  const thing = orderedOf(selected);
  if (!thing) return;
  const orders: Readonly<Record<Thing['kind'], readonly string[]>> = {
    structure: plan.structureOrder,
    camera: plan.cameraOrder,
    lamp: plan.lampOrder,
    patch: plan.patchOrder,
    situation: plan.situationOrder,
    picture: plan.pictureOrder,
    group: plan.groupOrder,
  };
  const place = orders[thing.kind].indexOf(thing.id) + by;
  editor.run(`Order of ${wordsFor(plan, [selected])}`, (now) => reorder(now, thing, place));
}

/** A thing that has a place in an order; null for what has none. */
function orderedOf(selected: Selected): Thing | null {
  switch (selected.kind) {
    case 'opening':
    case 'service':
    case 'boundary':
    case 'ground':
      return null;
    default:
      return { kind: selected.kind, id: selected.id };
  }
}

/** Where the lens of each camera is that has a place. */
export function eyesOf({ cameras, structures, ground }: Plan): Readonly<Record<string, Vec3>> {
  const entries = Object.values(cameras).flatMap(({ id, mount }) => {
    const placed = placeMount(mount, structures, groundHeight(ground));
    return placed.ok ? [[id, placed.value.eye] as const] : [];
  });
  return Object.fromEntries(entries);
}
