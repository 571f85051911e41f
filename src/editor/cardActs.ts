import { setAsBuilt } from '../plan/commands/setAsBuilt.ts';
import { tickCaution } from '../plan/commands/setCautions.ts';
import { NOTE_LENGTH } from '../plan/limits.ts';
import type { Editor } from './editor.ts';

/** The most characters of a note on a card. */
export const MOST_NOTE = NOTE_LENGTH;

const nameOf = (editor: Editor, camera: string): string =>
  editor.store.getState().plan.cameras[camera]?.name ?? camera;

/** Says that a person has looked at what a card stops for, or takes it back: a step of history. */
export const tickStop = (editor: Editor, camera: string, caution: string, looked: boolean): void =>
  editor.run(`${looked ? 'Tick' : 'Untick'} a stop of ${nameOf(editor, camera)}`, (plan) =>
    tickCaution(plan, camera, caution, looked),
  );

/** Notes how a camera was built: a step of history. */
export const noteAsBuilt = (editor: Editor, camera: string, field: string, text: string): void =>
  editor.run(`Note on the card of ${nameOf(editor, camera)}`, (plan) =>
    setAsBuilt(plan, camera, field, text.replaceAll(/\s+/gu, ' ').trim().slice(0, NOTE_LENGTH)),
  );
