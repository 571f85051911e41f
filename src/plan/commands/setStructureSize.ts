import type { Got, Roof, Structure } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withStructure } from './withStructure.ts';

/** Sizes of structures of all kinds, m and °; one kind has some of them. */
export interface StructureSizes {
  readonly base?: number;
  readonly height?: number;
  readonly top?: number;
  readonly thickness?: number;
  readonly wallThickness?: number | null;
  readonly roof?: Partial<Roof>;
  readonly crownRadius?: number;
  readonly clear?: number;
  readonly trunkDiameter?: number;
  readonly length?: number;
  readonly width?: number;
}

/** Which mark of `got` a size falls under, where it is not its own name. */
const marks: Readonly<Record<string, string>> = {
  crownRadius: 'crown',
  clear: 'crown',
  trunkDiameter: 'crown',
  length: 'size',
  width: 'size',
};

/**
 * Gives a structure sizes, each of which is then held to be got in the way given: a person who types one has taped it.
 * @throws RangeError on an unknown structure, a size that its kind lacks, or a number that is not finite
 */
export function setStructureSize(plan: Plan, id: string, sizes: StructureSizes, how: Got = 'measured'): Plan {
  return withStructure(plan, id, (structure) => {
    const { roof, ...plain } = sizes;
    for (const key of Object.keys(sizes))
      if (!Object.hasOwn(structure, key)) throw new RangeError(`a ${structure.kind} has no ${key}`);
    // Every key was found in the structure itself, so the kind keeps its shape.
    let next: Structure = changed<object>(structure, plain) as Structure;
    if (roof && next.kind === 'building') next = changed(next, { roof: changed(next.roof, roof) });
    return next === structure ? structure : marked(next, Object.keys(sizes), how);
  });
}

function marked(structure: Structure, sizes: readonly string[], how: Got): Structure {
  const got: Record<string, Got> = { ...structure.got };
  for (const size of sizes) {
    const mark = marks[size] ?? size;
    if (Object.hasOwn(got, mark)) got[mark] = how;
    else if (Object.hasOwn(got, 'size')) got['size'] = how;
  }
  return { ...structure, got } as Structure;
}
