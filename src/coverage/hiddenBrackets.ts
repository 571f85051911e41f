import type { Solid } from '../model/solid.ts';
import type { FoundSight } from '../sight/sightOf.ts';
import { areaWithin, bracketed, LEVEL } from './brackets.ts';
import { countedGround } from './countedGround.ts';
import type { Hidden } from './hiddenAreas.ts';
import { SCREENED_BY, SEEN_AT, WITHIN } from './judge.ts';
import { flatLayer, LayerJudge } from './layer.ts';
import { SolidsAt } from './solidsAt.ts';
import type { Within } from './within.ts';

/**
 * What of the frame is hidden, screened or inside solids, between bounds that surely hold.
 * @param most boxes that are looked at; left out as many as the app has time for
 */
export function hiddenBrackets(
  found: FoundSight,
  within: Pick<Within, 'parts' | 'whole'>,
  solids: readonly Solid[],
  most?: number,
): Hidden {
  const inside = new SolidsAt(solids, found.footing.plane);
  const hidden = SEEN_AT + 1;
  const [areas = []] = bracketed(
    [new LayerJudge(flatLayer(found, inside, null))],
    countedGround(within.parts, within.whole),
    LEVEL,
    [hidden + solids.length],
    ([labels = []], [into = []]) => into.push(...labels),
    most,
  );
  const of = (label: number) => areaWithin(areas[label] ?? { low: 0, high: 0 });
  return {
    byHider: solids.flatMap((_, solid) =>
      (areas[hidden + solid]?.high ?? 0) > 0 ? [{ solid, area: of(hidden + solid) }] : [],
    ),
    screened: of(SCREENED_BY),
    inside: of(WITHIN),
  };
}
