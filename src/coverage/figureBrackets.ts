import type { FoundSight } from '../sight/sightOf.ts';
import { areaWithin, bracketed, LEVEL, type Counted } from './brackets.ts';
import { PARTS, type Figure } from './figure.ts';
import { SEEN_AT } from './judge.ts';
import { flatLayer, LayerJudge } from './layer.ts';
import type { SolidsAt } from './solidsAt.ts';

/** A part of a figure at its height: what the camera sees there, and what lies inside solids. */
export interface PartLevel {
  readonly found: FoundSight;
  readonly inside: SolidsAt;
}

/**
 * Where parts of a standing person are seen, by day over flat ground, between bounds that surely hold.
 * @param levels one a part in the order of PARTS
 */
export function figureBrackets(
  levels: readonly PartLevel[],
  counted: Counted,
): Pick<Figure, 'byPart' | 'whole' | 'inPart'> {
  const judges = levels.map(({ found, inside }) => new LayerJudge(flatLayer(found, inside, null)));
  // Kinds: each part, then the whole person, then a part of it; class 1 where it is seen.
  const kinds = [...PARTS.map(() => 2), 2, 2];
  const areas = bracketed(judges, counted, LEVEL, kinds, (labels, into) => {
    let [sure, perhaps] = [0, 0];
    labels.forEach((list, part) => {
      const seen = list.includes(SEEN_AT);
      const unseen = list.some((label) => label !== SEEN_AT);
      if (seen) perhaps += 1;
      if (!unseen) sure += 1;
      if (seen) into[part]?.push(1);
      if (unseen) into[part]?.push(0);
    });
    const all = PARTS.length;
    const [whole = [], inPart = []] = into.slice(all);
    if (perhaps === all) whole.push(1);
    if (sure < all) whole.push(0);
    // Between none and all of them: surely where some are and some are not.
    const noneAtAll = sure === 0;
    const allOfThem = perhaps === all;
    if (perhaps > 0 && sure < all) inPart.push(1);
    if (noneAtAll || allOfThem) inPart.push(0);
  });
  const of = (kind: number) => areaWithin(areas[kind]?.[1] ?? { low: 0, high: 0 });
  return {
    byPart: { feet: of(0), waist: of(1), face: of(2) },
    whole: of(PARTS.length),
    inPart: of(PARTS.length + 1),
  };
}
