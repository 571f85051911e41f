import type { Editor } from '../editor.ts';
import { keepTrial, takeUpTrial } from './keptTrial.ts';
import { createTrial, type TrialStore } from './trial.ts';

const trials = new WeakMap<Editor, TrialStore>();

/** The trial of an editor: it outlives its page, and with the tab's own storage a reload. */
export function trialOf(editor: Editor, storage: Storage): TrialStore {
  const known = trials.get(editor);
  if (known) return known;
  const made = createTrial(editor.store.getState().plan);
  takeUpTrial(made, storage);
  keepTrial(made, storage);
  trials.set(editor, made);
  return made;
}
