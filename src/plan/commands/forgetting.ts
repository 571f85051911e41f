import type { Situation } from '../plan.ts';

/** A situation that no longer speaks of a structure, or of openings that went. */
export function forgetting(situation: Situation, id: string | null, openings: readonly string[]): Situation {
  const leaves = Object.entries(situation.leaves).filter(([opening]) => !openings.includes(opening));
  const away = situation.away.filter((other) => other !== id);
  if (away.length === situation.away.length && leaves.length === Object.keys(situation.leaves).length)
    return situation;
  return { ...situation, away, leaves: Object.fromEntries(leaves) };
}
