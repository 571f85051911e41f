import type { Vec2 } from '../../../src/base/vector.ts';
import type { Tool } from '../../../src/editor/editor.ts';
import { createEditor } from '../../../src/editor/store.ts';
import type { TypedBy } from '../../../src/editor/tools/chart.ts';
import type { Pointed } from '../../../src/editor/tools/pointed.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import type { Ring } from '../../../src/model/structure.ts';
import { addStructure } from '../../../src/plan/commands/addStructure.ts';
import { emptyPlan } from '../../../src/plan/emptyPlan.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { fromAbove } from './planView.ts';

export const nothing = emptyPlan('drawn', 'Drawn');

/** A tool in hand, seen from above: verbs that a person does. */
export function inHand(tool: Tool, plan: Plan = nothing) {
  const editor = createEditor(plan);
  const tools = createToolbox(editor, LATER_TOOLS);
  editor.hold(tool);
  const now = () => editor.store.getState();
  const state = () => tools.store.getState().state;
  const text = () => state().strip?.text ?? '';
  const at = (point: Vec2, more: Partial<Pointed> = {}) => fromAbove(point, more);
  return {
    editor,
    tools,
    now,
    state,
    text,
    hover: (point: Vec2, more: Partial<Pointed> = {}) => tools.hover(at(point, more)),
    click: (point: Vec2, more: Partial<Pointed> = {}) => {
      tools.hover(at(point, more));
      tools.click(at(point, more));
    },
    drag: (from: Vec2, to: Vec2, more: Partial<Pointed> = {}) => {
      tools.drag(at(from, more), at([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], more));
      tools.drag(at(from, more), at(to, more));
      tools.release();
    },
    /** Types into the first field, or another; the trouble, null where it was taken. */
    type: (given: string, by: TypedBy = 'enter', key = state().strip?.fields[0]?.key ?? '') =>
      tools.typed(key, given, by),
    structure: (name: string) => Object.values(now().plan.structures).find((one) => one.name === name),
  };
}

/** A plan with blocks of the names and outlines given. */
export function withBlocks(blocks: Readonly<Record<string, Ring>>, height = 2.4): Plan {
  return Object.entries(blocks).reduce((plan, [name, outline]) => {
    const made = addStructure(plan, {
      name,
      kind: 'block',
      outline,
      base: 0,
      height,
      passage: 'solid',
      got: { outline: 'measured', base: 'measured', height: 'measured' },
    });
    if (!made.ok) throw new Error(`${name} was refused`);
    return made.value.plan;
  }, nothing);
}

export const rectangle = (x0: number, y0: number, x1: number, y1: number): Ring => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];
