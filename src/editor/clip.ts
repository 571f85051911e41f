import type { Vec2 } from '../base/vector.ts';
import { copyText, pasteText } from '../plan/commands/copyText.ts';
import type { Movable } from '../plan/commands/thing.ts';
import type { Plan } from '../plan/plan.ts';
import type { Editor } from './editor.ts';
import { thingOf } from './recordsOf.ts';
import { everything } from './selectEverything.ts';
import { deleteSelected } from './selectionActs.ts';
import { cornersSelected, thingsOf, wordsFor } from './shaping/selection.ts';

/** What is pasted upon its own like goes so far east, m, as often as it takes. */
const ASIDE = 1;
/** Corners nearer than this are the same, m. */
const SAME = 1e-6;

/** Why nothing of the selection can go on the clipboard; null where something can. */
export function notCopied(editor: Editor): string | null {
  const { plan, selection } = editor.store.getState();
  if (selection.length === 0) return 'Select something first, then copy it.';
  const things = copyable(plan, selection);
  return things.length > 0 ? null : 'This goes along with what it is part of. Select that, then copy it.';
}

/** The selection as text for the clipboard; null where nothing of it can be copied, and that is said. */
export function copied(editor: Editor): string | null {
  const { plan, selection } = editor.store.getState();
  const trouble = notCopied(editor);
  if (trouble !== null) {
    editor.say(trouble);
    return null;
  }
  const text = copyText(plan, copyable(plan, selection));
  editor.say(`${wordsFor(plan, selection)}: copied. Paste here, or in another plan or tab.`);
  return text;
}

/** The selection as text for the clipboard, taken out of the plan; what is locked is copied and stays. */
export function cut(editor: Editor): string | null {
  const { readOnly, selection, plan } = editor.store.getState();
  if (readOnly) {
    editor.say('This plan is edited in another tab. Edit here instead, then change it.');
    return null;
  }
  const text = copied(editor);
  if (text === null) return null;
  deleteSelected(editor, selection);
  const isOut = copyable(plan, selection).every(
    (thing) => thingOf(editor.store.getState().plan, thing) === undefined,
  );
  if (isOut) editor.say(`${wordsFor(plan, selection)}: cut. Paste here, or in another plan or tab.`);
  return text;
}

/**
 * Puts what was copied into the plan as one step and selects it: where it was, or a metre and more beside what lies there
 * already.
 * @returns whether something was put in; if not, the reason is said
 */
export function paste(editor: Editor, text: string): boolean {
  const { plan, readOnly } = editor.store.getState();
  if (readOnly) {
    editor.say('This plan is edited in another tab. Edit here instead, then change it.');
    return false;
  }
  const inPlace = pasteText(plan, text);
  const by: Vec2 = inPlace.ok ? [asideOf(plan, inPlace.value.plan, inPlace.value.things), 0] : [0, 0];
  const put = by[0] === 0 ? inPlace : pasteText(plan, text, by);
  if (!put.ok) {
    editor.say('Nothing was pasted.', put.faults);
    return false;
  }
  const { plan: next, things } = put.value;
  if (things.length === 0) {
    editor.say('Nothing was pasted.', put.notes);
    return false;
  }
  editor.hold('rest');
  const name = wordsFor(next, things);
  editor.run(`Paste ${name}`, () => next);
  editor.selectAll(things);
  editor.say(`${name}: pasted.`, put.notes);
  return true;
}

/** The site boundary is left out: a plan has one. */
const copyable = (plan: Plan, selection: Parameters<typeof thingsOf>[1]): readonly Movable[] =>
  thingsOf(plan, selection).filter(({ kind }) => kind !== 'boundary');

/** How far east things must go so that they do not lie wholly upon corners that are there already, m. */
function asideOf(before: Plan, after: Plan, things: readonly Movable[]): number {
  const there = cornersSelected(before, everything(before));
  const corners = cornersSelected(after, things);
  // A camera without its wall is loose where the one on the wall is.
  const isLoose = things.some(
    ({ kind, ...thing }) =>
      kind === 'camera' && 'id' in thing && after.cameras[thing.id]?.mount.kind === 'loose',
  );
  const isTaken = (east: number): boolean =>
    corners.length > 0 &&
    corners.every(([x, y]) =>
      there.some(([a, b]) => Math.abs(x + east - a) < SAME && Math.abs(y - b) < SAME),
    );
  let east = isLoose ? ASIDE : 0;
  while (isTaken(east)) east += ASIDE;
  return east;
}
