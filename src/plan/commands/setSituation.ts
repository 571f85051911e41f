import type { Leaf } from '../../model/structure.ts';
import type { Plan, Situation } from '../plan.ts';
import { changed } from './changed.ts';
import { withRecord } from './withRecord.ts';

/** What a person switches in a situation. */
export interface SituationChange {
  readonly name?: string;
  readonly night?: boolean;
  /** Null: each tree and hedge as it is drawn. */
  readonly treesInLeaf?: boolean | null;
  /** A structure that is away, or back. */
  readonly away?: { readonly structure: string; readonly gone: boolean };
  /** How the leaf of an opening stands; null: as it is drawn. */
  readonly leaf?: { readonly opening: string; readonly stands: Leaf | null };
}

/**
 * Changes a situation.
 * @throws RangeError on an unknown situation, structure or opening
 */
export function setSituation(plan: Plan, id: string, { away, leaf, ...plain }: SituationChange): Plan {
  const situations = withRecord(plan.situations, id, 'situation', (situation) => {
    let next = changed(situation, plain);
    if (away) next = withAway(next, plan, away);
    if (leaf) next = withLeaf(next, plan, leaf);
    return next;
  });
  return situations === plan.situations ? plan : { ...plan, situations };
}

function withAway(
  situation: Situation,
  plan: Plan,
  { structure, gone }: NonNullable<SituationChange['away']>,
): Situation {
  if (!Object.hasOwn(plan.structures, structure))
    throw new RangeError(`the plan has no structure ${structure}`);
  if (situation.away.includes(structure) === gone) return situation;
  const others = situation.away.filter((other) => other !== structure);
  return { ...situation, away: gone ? [...others, structure] : others };
}

function withLeaf(
  situation: Situation,
  plan: Plan,
  { opening, stands }: NonNullable<SituationChange['leaf']>,
): Situation {
  const isThere = Object.values(plan.structures).some(
    (structure) => 'openings' in structure && structure.openings.some(({ id }) => id === opening),
  );
  if (!isThere) throw new RangeError(`the plan has no opening ${opening}`);
  if ((Object.hasOwn(situation.leaves, opening) ? situation.leaves[opening] : null) === stands)
    return situation;
  const { [opening]: _, ...others } = situation.leaves;
  return { ...situation, leaves: stands === null ? others : { ...others, [opening]: stands } };
}
