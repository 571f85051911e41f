import type { Outcome } from '../../base/fault.ts';
import type { Got, Structure } from '../../model/structure.ts';
import type { Passage } from '../../model/passage.ts';
import type { Plan } from '../plan.ts';
import { admitted } from './admitted.ts';
import { changed } from './changed.ts';
import { setStructureSize, type StructureSizes } from './setStructureSize.ts';
import { withStructure } from './withStructure.ts';

/** What of structures of all kinds is chosen, not measured; one kind has some of it. */
export interface StructureChoices {
  readonly sort?: 'wall' | 'fence' | 'hedge' | 'car' | 'van';
  readonly passage?: Passage;
  readonly posts?: number;
  readonly inLeaf?: boolean;
  readonly yearBuilt?: number | null;
}

/**
 * Changes what of a structure is chosen.
 * @returns refused where the file could not hold it, or something on the structure would no longer fit
 * @throws  RangeError on an unknown structure, or a choice that its kind lacks
 */
export function setStructure(plan: Plan, id: string, choices: StructureChoices): Outcome<Plan> {
  const next = withStructure(plan, id, (structure) => {
    for (const key of Object.keys(choices))
      if (!Object.hasOwn(structure, key)) throw new RangeError(`a ${structure.kind} has no ${key}`);
    // Every key was found in the structure itself, and the schema judges the values.
    return changed<object>(structure, choices) as Structure;
  });
  return admitted(plan, next);
}

/**
 * Gives a structure sizes, as `setStructureSize` does.
 * @returns refused where the file could not hold them, or something on the structure would no longer fit
 * @throws  RangeError on an unknown structure, a size that its kind lacks, or a number that is not finite
 */
export const resizeStructure = (plan: Plan, id: string, sizes: StructureSizes, how?: Got): Outcome<Plan> =>
  admitted(plan, setStructureSize(plan, id, sizes, how));
