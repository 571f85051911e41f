import { setStructureSize } from '../../../plan/commands/setStructureSize.ts';
import { setGot } from '../../settings/structureSettings.ts';
import type { Raise } from './drawSpec.ts';

/** A structure's own height, raised. */
export const raiseHeight = (first: number): Raise => ({
  first,
  read: (plan, thing) => {
    const structure = thing.kind === 'structure' ? plan.structures[thing.id] : undefined;
    return structure && 'height' in structure ? structure.height : null;
  },
  set: (plan, thing, height, how) => {
    if (thing.kind !== 'structure') return plan;
    // A height typed as it stands already is known from then on.
    return setGot(setStructureSize(plan, thing.id, { height }, how), thing.id, 'height', how);
  },
});
