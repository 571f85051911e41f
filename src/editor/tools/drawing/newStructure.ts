import { groundHeight } from '../../../model/ground.ts';
import { signedArea } from '../../../model/ring.ts';
import type { Got, Ring, Structure } from '../../../model/structure.ts';
import { addStructures } from '../../../plan/commands/addStructures.ts';
import { freshId, takenIds } from '../../../plan/commands/freshId.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Drawn, Made } from './drawSpec.ts';

/** What every new structure of a name has. */
export interface Fresh {
  readonly id: string;
  readonly name: string;
  readonly hidden: false;
  readonly locked: false;
}

/** An id and a name that are free: "Fence", then "Fence 2". */
export function freshThing(plan: Plan, word: string): Fresh {
  const names = new Set(Object.values(plan.structures).map(({ name }) => name));
  let name = word;
  for (let number = 2; names.has(name); number += 1) name = `${word} ${number}`;
  const id = freshId(takenIds(plan), `${word.toLowerCase().replaceAll(' ', '-')}-`);
  return { id, name, hidden: false, locked: false };
}

/** The plan with a new structure, last in order. */
export function added(plan: Plan, structure: Structure): Made {
  return {
    plan: addStructures(plan, { structures: [structure], origin: null, credits: [] }),
    thing: { kind: 'structure', id: structure.id },
  };
}

/** The height on which a new structure stands, m above z = 0. */
export const baseOf = (plan: Plan): number => groundHeight(plan.ground);

/** How what was drawn is known: typed lengths are taped, clicks on a picture with a scale are read from a map. */
export function gotOf(plan: Plan, { typed }: Pick<Drawn, 'typed'>): Got {
  if (typed) return 'measured';
  const traced = Object.values(plan.pictures).some(
    ({ use, hidden }) => use.kind === 'site' && use.metresPerPixel !== null && !hidden,
  );
  return traced ? 'mapped' : 'guessed';
}

/** The ring counter-clockwise, from the same first corner. */
export function counterClockwise(ring: Ring): Ring {
  if (signedArea(ring) >= 0) return ring;
  const [first, ...rest] = ring;
  return first ? [first, ...rest.toReversed()] : ring;
}
