import type { Vec3 } from '../base/vector.ts';
import { deleteThing } from '../plan/commands/deleteThing.ts';
import { markThing } from '../plan/commands/markThing.ts';
import { renamePlan, renameThing } from '../plan/commands/renameThing.ts';
import { setSettings } from '../plan/commands/setSettings.ts';
import type { Marked, Thing } from '../plan/commands/thing.ts';
import type { PlanSettings } from '../plan/plan.ts';
import type { Editor } from './editor.ts';

/** What a person calls a thing; its id where the plan no longer has it. */
function nameOf(editor: Editor, { kind, id }: Thing): string {
  const { structures, cameras, lamps, patches, situations, pictures, groups } = editor.store.getState().plan;
  const records: Readonly<Record<string, { readonly name: string }>> = {
    structure: structures,
    camera: cameras,
    lamp: lamps,
    patch: patches,
    situation: situations,
    picture: pictures,
    group: groups,
  }[kind];
  return records[id]?.name ?? id;
}

export const rename = (editor: Editor, thing: Thing, name: string): void =>
  editor.run(`Rename ${nameOf(editor, thing)}`, (plan) => renameThing(plan, thing, name));

export const renameWhole = (editor: Editor, name: string): void =>
  editor.run('Rename the plan', (plan) => renamePlan(plan, name));

/** Hides a thing from the picture, or shows it again. */
export const hide = (editor: Editor, thing: Marked, hidden: boolean): void =>
  editor.run(`${hidden ? 'Hide' : 'Show'} ${nameOf(editor, thing)}`, (plan) =>
    markThing(plan, thing, { hidden }),
  );

/** Takes a thing out; cameras on a structure stay where they are, fixed to nothing. `eyes` are the lenses by camera. */
export function remove(editor: Editor, thing: Thing, eyes: Readonly<Record<string, Vec3>>): void {
  const name = nameOf(editor, thing);
  editor.run(`Delete ${name}`, (plan) => deleteThing(plan, thing, eyes));
  editor.say(`${name} is deleted. Undo brings it back.`);
}

export const judgeBy = (editor: Editor, settings: Partial<PlanSettings>): void =>
  editor.run('Settings of the plan', (plan) => setSettings(plan, settings));
