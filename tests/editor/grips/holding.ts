import type { Vec3 } from '../../../src/base/vector.ts';
import type { Selected } from '../../../src/editor/editor.ts';
import type { Grip } from '../../../src/editor/grips/grip.ts';
import { gripsOf } from '../../../src/editor/grips/gripsOf.ts';
import { sameGrip } from '../../../src/editor/grips/pullOf.ts';
import { createEditor } from '../../../src/editor/store.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import type { Building, Structure } from '../../../src/model/structure.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { pointing } from '../tools/pointing.ts';
import { expect } from 'vitest';

/** An editor with one thing selected, and what it takes to pull its handles. */
export function holding(plan: Plan, thing: Selected = { kind: 'structure', id: 'house' }) {
  const editor = createEditor(plan);
  const tools = createToolbox(editor, LATER_TOOLS);
  editor.select(thing);
  const now = () => editor.store.getState();
  const structure = (id = 'house'): Structure => {
    const found = now().plan.structures[id];
    if (!found) throw new Error(`no ${id}`);
    return found;
  };
  const building = (id = 'house'): Building => {
    const found = structure(id);
    if (found.kind !== 'building') throw new Error(`${id} is no building`);
    return found;
  };
  const placeOf = (grip: Grip): Vec3 => {
    const found = gripsOf(now().plan, now().selection).find((one) => sameGrip(one.grip, grip));
    if (!found) throw new Error(`no handle ${JSON.stringify(grip)}`);
    return found.at;
  };
  /** Seizes a handle where it is and pulls it to places one after the other. */
  const pull = (grip: Grip, places: readonly Vec3[], more: object = {}, viewer?: Vec3) => {
    const { plan: atPress } = now();
    const from = { ...pointing(atPress, placeOf(grip), {}, viewer), grip };
    expect(tools.takes(from)).toBe(true);
    for (const place of places) tools.drag(from, pointing(atPress, place, { free: true, ...more }, viewer));
  };
  const state = () => tools.store.getState().state;
  return { editor, tools, now, structure, building, pull, placeOf, state };
}
