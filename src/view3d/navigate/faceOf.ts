import { surfaceAt } from '../../editor/settings/surfaceChoices.ts';
import type { Pointed } from '../../editor/tools/pointed.ts';
import type { Model } from '../Model.ts';

/** Asks for coverage of the wall or roof face pointed at, else in the middle of the view; tells what it does. */
export function askForFace(model: Model, { struck }: Pointed = model.pointedNow()): void {
  const { editor } = model;
  const { structures } = editor.store.getState().plan;
  const id = struck?.structure ?? null;
  const structure = id === null ? undefined : structures[id];
  const face = struck && structure ? surfaceAt(structure, struck.point, struck.normal) : null;
  if (!structure || !face) {
    editor.say('Point at a wall or a roof, then press Shift E for its coverage.');
    return;
  }
  editor.ask({ kind: 'surface', height: 0, surface: face.key });
  editor.say(`Coverage of ${structure.name}, ${face.name.toLowerCase()}. Esc goes back to the ground.`);
}

/** Back to the ground from a face, once nothing else is left to step back from. */
export function leaveFace({ editor }: Model): boolean {
  const { target, tool, selected } = editor.store.getState();
  if (target.kind !== 'surface' || tool !== 'rest' || selected !== null) return false;
  editor.ask({ kind: 'ground', height: 0 });
  return true;
}
