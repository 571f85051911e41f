import type { Vec3 } from '../../base/vector.ts';
import { setThreshold, tickCaution } from '../../plan/commands/setCautions.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import type { Editor, Measured } from '../editor.ts';

/** Notes that somebody has looked at a caution, or takes the note back. */
export const tick = (editor: Editor, { id, name }: PlanCamera, caution: string, looked: boolean): void =>
  editor.run(`${looked ? 'Looked at' : 'Not looked at'} a caution of ${name}`, (plan) =>
    tickCaution(plan, id, caution, looked),
  );

/** Sets a threshold of cautions; the default is none of the plan's own. Arrow steps within a second are one. */
export const setLimit = (
  editor: Editor,
  { id, label }: { readonly id: string; readonly label: string },
  value: number | null,
  merge = false,
): void =>
  editor.run(`Limit: ${label}`, (plan) => setThreshold(plan, id, value), merge ? `limit ${id}` : undefined);

/** Marks places in the Model by lines from a lens, beside what was measured; the answer takes them away again. */
export function markPlaces(editor: Editor, from: Vec3, places: readonly Vec3[]): () => void {
  const made = places.map((at): Measured => ({ points: [from, at], closed: false }));
  const { store } = editor;
  editor.measured([...store.getState().measured, ...made]);
  return () => editor.measured(store.getState().measured.filter((one) => !made.includes(one)));
}
