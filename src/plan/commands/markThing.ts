import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import type { Marked } from './thing.ts';
import { withCamera } from './withCamera.ts';
import { withStructure } from './withStructure.ts';

/**
 * Renames, hides or locks a structure or a camera; or shows and frees it again.
 * @throws RangeError where the plan has no such thing
 */
export const markThing = (
  plan: Plan,
  { kind, id }: Marked,
  marks: { readonly name?: string; readonly hidden?: boolean; readonly locked?: boolean },
): Plan =>
  kind === 'camera'
    ? withCamera(plan, id, (camera) => changed(camera, marks))
    : withStructure(plan, id, (structure) => changed(structure, marks));
