import type { Editor } from '../editor/editor.ts';
import { nameOfSelected } from '../editor/recordsOf.ts';
import type { DeskStore } from './desk.ts';

/** A sheet that is fetched first is there within so many frames. */
const PATIENCE = 90;

/** Why nothing can be renamed now; null where something can. */
export function notNamed(editor: Editor): string | null {
  const { plan, selected, selection, readOnly } = editor.store.getState();
  if (readOnly) return 'This plan is edited in another tab.';
  if (selection.length > 1) return 'Select one thing to give it a name.';
  return nameOfSelected(plan, selected) === undefined ? 'Select something to give it a name.' : null;
}

/** Brings the sheet of what is selected up and puts the focus into its name, all of it marked. */
export function goToName(editor: Editor, desk: DeskStore): void {
  const trouble = notNamed(editor);
  if (trouble !== null) return editor.say(trouble);
  const { plan, selected } = editor.store.getState();
  desk.setState({ sheet: 'setting', drawer: true, tab: 'setting' });
  let frames = 0;
  const look = () => {
    frames += 1;
    const field = nameField();
    if (field) {
      field.focus();
      field.select();
    } else if (frames < PATIENCE && editor.store.getState().selected === selected)
      requestAnimationFrame(look);
    else editor.say(`${nameOfSelected(plan, selected) ?? 'This'} has no name of its own.`);
  };
  requestAnimationFrame(look);
}

/** The field of the sheet that is labelled as a name. */
function nameField(): HTMLInputElement | null {
  const labels = document.querySelectorAll<HTMLLabelElement>('aside[aria-label="Setting sheet"] label');
  const label = [...labels].find(({ textContent }) => textContent.trim() === 'Name');
  const field = label?.control;
  return field instanceof HTMLInputElement ? field : null;
}
