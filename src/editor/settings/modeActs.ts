import type { Housing, PictureMode, PictureUse } from '../../optics/device.ts';
import { addMode, recordMode, removeMode, setMode } from '../../plan/commands/setModes.ts';
import { setHousing } from '../../plan/commands/setSheet.ts';
import { setLens } from '../../plan/commands/setLens.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import type { Editor } from '../editor.ts';

/** Bands are judged in this picture from now on. */
export const recordIn = (editor: Editor, { id, name }: PlanCamera, mode: PictureMode): void =>
  editor.run(`Recorded picture of ${name}`, (plan) => recordMode(plan, id, mode.id));

export const addPictureMode = (editor: Editor, { id, name }: PlanCamera, use: PictureUse): void =>
  editor.run(`Picture of ${name}`, (plan) => addMode(plan, id, use));

export const takeMode = (editor: Editor, { id, name }: PlanCamera, mode: PictureMode): void =>
  editor.run(`Take ${mode.name} from ${name}`, (plan) => removeMode(plan, id, mode.id));

/** Changes what a picture mode is called or for, or whether its part of the sensor is known. */
export const changeMode = (
  editor: Editor,
  { id, name }: PlanCamera,
  mode: PictureMode,
  change: Partial<Pick<PictureMode, 'name' | 'use' | 'cropKnown'>>,
): void => editor.run(`${mode.name} of ${name}`, (plan) => setMode(plan, id, mode.id, change));

export const housed = (editor: Editor, { id, name }: PlanCamera, housing: Housing | null): void =>
  editor.run(`Housing of ${name}`, (plan) => setHousing(plan, id, housing));

/** Says for which picture the stated angles are printed; null for the whole sensor. */
export const statedFor = (editor: Editor, { id, name }: PlanCamera, mode: string | null): void =>
  editor.run(`Stated angles of ${name}`, (plan) => setLens(plan, id, { statedIn: mode }));
