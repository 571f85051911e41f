import type { Movable } from '../plan/commands/thing.ts';
import type { Plan } from '../plan/plan.ts';
import type { Editor } from './editor.ts';

/** All that stands somewhere, but for the boundary. */
export function everything(plan: Plan): readonly Movable[] {
  return [
    ...plan.structureOrder.map((id): Movable => ({ kind: 'structure', id })),
    ...plan.patchOrder.map((id): Movable => ({ kind: 'patch', id })),
    ...plan.lampOrder.map((id): Movable => ({ kind: 'lamp', id })),
    ...plan.cameraOrder.map((id): Movable => ({ kind: 'camera', id })),
    ...plan.pictureOrder.map((id): Movable => ({ kind: 'picture', id })),
  ];
}

/** Selects all that has a place of its own. */
export function selectEverything(editor: Editor): void {
  const { plan } = editor.store.getState();
  const things = everything(plan);
  editor.selectAll(things);
  editor.say(things.length === 1 ? '1 thing selected.' : `${things.length} things selected.`);
}
