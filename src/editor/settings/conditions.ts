import { addSituation, newSituation } from '../../plan/commands/addSituation.ts';
import type { Editor } from '../editor.ts';

/** Puts conditions "Night" into the plan, else as drawn; their id. */
export function addNight(editor: Editor): string {
  const night = { ...newSituation(editor.store.getState().plan, 'Night'), night: true };
  editor.run('Add night', (plan) => addSituation(plan, night));
  return night.id;
}
