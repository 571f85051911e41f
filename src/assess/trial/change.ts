import { less, NO_AREA, plus, type Area } from '../../coverage/area.ts';
import { ruleOf } from '../../coverage/rule.ts';
import { areasOver, outlinesOf, slackOf } from '../../coverage/siteAreas.ts';
import type { ArcRings } from '../../sight/arcRings.ts';
import type { SiteAsked } from '../together.ts';

/** What a second setting covers that the first does not, and the other way round. */
interface Exchanged {
  readonly gained: Area;
  readonly lost: Area;
}

/** What becomes of the ground when one setting of a camera takes the place of another. */
export interface TrialChange {
  /** One an edition band, coarsest first: at that band or better. */
  readonly byBand: readonly Exchanged[];
  /** Ground that reaches a finer band than before, from nothing included. */
  readonly finer: Area;
  /** Ground that falls to a coarser band, or is no longer covered. */
  readonly coarser: Area;
}

/**
 * The exchange between two settings, along the outlines of each band themselves: what one covers beyond another is what
 * both cover together, less the other.
 * @param asked with two seers, the standing setting first
 */
export function changeOf(asked: SiteAsked): TrialChange {
  const { seers, ring, height, target, bands, caps } = asked;
  const share = slackOf(seers);
  const [one = [], two = []] = seers.map(({ camera, seen }) =>
    outlinesOf(ring, { camera, seen, rule: ruleOf(camera, target, bands, caps) }, height),
  );
  const areaOf = (outlines: readonly (ArcRings | undefined)[]): Area => {
    const there = outlines.flatMap((outline) => (outline && outline.corners.length > 0 ? [[outline]] : []));
    return areasOver(there, 1, share).atLeast[0] ?? NO_AREA;
  };
  /** Of `outline` what lies out of `other`. */
  const beyond = (outline: ArcRings | undefined, other: ArcRings | undefined): Area =>
    less(areaOf([outline, other]), areaOf([other]));
  return exchange(bands.length, (from, to, band, than) =>
    beyond((to === 'two' ? two : one)[band], (from === 'two' ? two : one)[than]),
  );
}

type Side = 'one' | 'two';

/**
 * Puts an exchange together from areas that one side covers at a band or better and the other does not.
 * @param beyond what `to` covers at `band` or better that `from` does not cover at `than` or better; nothing past the last band
 */
export function exchange(
  bands: number,
  beyond: (from: Side, to: Side, band: number, than: number) => Area,
): TrialChange {
  const all = Array.from({ length: bands }, (_, band) => band);
  const at = (from: Side, to: Side) => all.map((band) => beyond(from, to, band, band));
  const [gained, lost] = [at('one', 'two'), at('two', 'one')];
  // Just at a band and not so before: at it or better, less what is better still.
  const risen = (from: Side, to: Side, same: readonly Area[]): Area =>
    same
      .map((area, band) => (band + 1 < bands ? less(area, beyond(from, to, band + 1, band)) : area))
      .reduce(plus, NO_AREA);
  return {
    byBand: all.map((band) => ({ gained: gained[band] ?? NO_AREA, lost: lost[band] ?? NO_AREA })),
    finer: risen('one', 'two', gained),
    coarser: risen('two', 'one', lost),
  };
}
