import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import type { Marked } from './thing.ts';
import { withCamera } from './withCamera.ts';
import { withRecord } from './withRecord.ts';
import { withStructure } from './withStructure.ts';

/**
 * Renames, hides or locks a structure, a camera or a picture; or shows and frees it again.
 * @throws RangeError where the plan has no such thing
 */
export const markThing = (
  plan: Plan,
  { kind, id }: Marked,
  marks: { readonly name?: string; readonly hidden?: boolean; readonly locked?: boolean },
): Plan => {
  switch (kind) {
    case 'camera':
      return withCamera(plan, id, (camera) => changed(camera, marks));
    case 'picture': {
      const pictures = withRecord(plan.pictures, id, 'picture', (picture) => changed(picture, marks));
      return pictures === plan.pictures ? plan : { ...plan, pictures };
    }
    case 'structure':
      return withStructure(plan, id, (structure) => changed(structure, marks));
  }
};

/** Hides or locks several things at once, or shows and frees them. */
export const markThings = (
  plan: Plan,
  things: readonly Marked[],
  marks: { readonly hidden?: boolean; readonly locked?: boolean },
): Plan => things.reduce((next, thing) => markThing(next, thing, marks), plan);
