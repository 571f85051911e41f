import type { Opening, Structure } from '../model/structure.ts';
import type { Situation } from '../plan/plan.ts';

/** A structure as a situation has it, and what tells it from the drawing; '' and the very same object where nothing does. */
export interface Standing {
  readonly structure: Structure;
  readonly key: string;
}

/**
 * How a structure stands in a situation: what grows in leaf or bare, leaves of openings open, glazed or closed. Where a
 * block is built, its openings are recesses without leaves, and it stays as it is drawn.
 */
export function standingIn(structure: Structure, situation: Situation): Standing {
  const { treesInLeaf, leaves } = situation;
  if (structure.kind === 'tree')
    return treesInLeaf === null || treesInLeaf === structure.inLeaf
      ? { structure, key: '' }
      : { structure: { ...structure, inLeaf: treesInLeaf }, key: treesInLeaf ? 'in leaf' : 'bare' };
  if (structure.kind === 'building') {
    if (structure.wallThickness === null) return { structure, key: '' };
    const { openings, key } = openingsIn(structure.openings, leaves);
    return key === '' ? { structure, key } : { structure: { ...structure, openings }, key };
  }
  if (structure.kind !== 'barrier') return { structure, key: '' };
  const { openings, key } = openingsIn(structure.openings, leaves);
  const grown = structure.sort === 'hedge' && treesInLeaf !== null;
  const passage = grown ? (treesInLeaf ? 'solid' : 'screen') : structure.passage;
  if (passage === structure.passage)
    return key === '' ? { structure, key } : { structure: { ...structure, openings }, key };
  return { structure: { ...structure, openings, passage }, key: `${passage} ${key}` };
}

function openingsIn(
  openings: readonly Opening[],
  leaves: Situation['leaves'],
): { readonly openings: readonly Opening[]; readonly key: string } {
  let key = '';
  const stood = openings.map((opening) => {
    const leaf = Object.hasOwn(leaves, opening.id) ? leaves[opening.id] : undefined;
    if (leaf === undefined || leaf === opening.leaf) return opening;
    key += `${opening.id} ${leaf},`;
    return { ...opening, leaf };
  });
  return key === '' ? { openings, key } : { openings: stood, key };
}
