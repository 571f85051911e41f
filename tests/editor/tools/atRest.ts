import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import type { Selected } from '../../../src/editor/editor.ts';
import { createEditor } from '../../../src/editor/store.ts';
import type { Pointed } from '../../../src/editor/tools/pointed.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { pointing } from './pointing.ts';

export const thing = (id: string): Selected => ({ kind: 'structure', id });

/** An editor at rest with a selection, under a clock that stands. */
export function atRest(plan: Plan, ...selection: readonly Selected[]) {
  let clock = 0;
  const editor = createEditor(plan, () => clock);
  const tools = createToolbox(editor, LATER_TOOLS);
  editor.selectAll(selection);
  const now = () => editor.store.getState();
  const state = () => tools.store.getState().state;
  const outline = (id: string): readonly Vec2[] => {
    const found = now().plan.structures[id];
    if (!found || !('outline' in found)) throw new Error(`no outline of ${id}`);
    return found.outline;
  };
  const at = (point: Vec3, more: Partial<Pointed> = {}) => pointing(now().plan, point, more);
  const later = (ms: number) => {
    clock += ms;
  };
  return { editor, tools, now, state, outline, at, later };
}
