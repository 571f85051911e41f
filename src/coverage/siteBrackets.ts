import { areaWithin, bracketed, LEVEL, type Counted } from './brackets.ts';
import { SEEN_AT } from './judge.ts';
import { LayerJudge, type Layer } from './layer.ts';
import type { SiteAreas } from './siteAreas.ts';

/** Boxes that are looked at, at most: each asks all cameras. */
const MOST = 20_000;

/**
 * Areas of a site by the best of several cameras and by how many, by day on a flat surface, between bounds that surely hold.
 * @param layers one a camera, with its rule
 */
export function siteBrackets(
  layers: readonly Layer[],
  counted: Counted,
  bands: number,
  most = MOST,
): SiteAreas {
  const judges = layers.map((layer) => new LayerJudge(layer));
  // Kinds: at least each band by the best, then at least each count; class 1 where that is so.
  const kinds = Array.from({ length: bands + layers.length }, () => 2);
  const areas = bracketed(
    judges,
    counted,
    LEVEL,
    kinds,
    (labels, into) => {
      let [low, high, surely, perhaps] = [0, 0, 0, 0];
      for (const list of labels) {
        const [least, greatest] = bandsIn(list, bands);
        low = Math.max(low, least);
        high = Math.max(high, greatest);
        if (least > 0) surely += 1;
        if (greatest > 0) perhaps += 1;
      }
      into.forEach((list, kind) => {
        const [sure, possible, level] =
          kind < bands ? [low, high, kind + 1] : [surely, perhaps, kind - bands + 1];
        if (possible >= level) list.push(1);
        if (sure < level) list.push(0);
      });
    },
    most,
  );
  const found = areas.map(([, holds]) => areaWithin(holds ?? { low: 0, high: 0 }));
  return { atLeast: found.slice(0, bands), byCount: found.slice(bands) };
}

/** The least and greatest band, index + 1, that some labels stand for; 0 where a target may not be covered. */
function bandsIn(labels: readonly number[], bands: number): readonly [number, number] {
  let [least, greatest] = [bands, 0];
  for (const label of labels) {
    const band = label >= SEEN_AT && label <= SEEN_AT + bands ? label - SEEN_AT : 0;
    least = Math.min(least, band);
    greatest = Math.max(greatest, band);
  }
  return [least, greatest];
}
