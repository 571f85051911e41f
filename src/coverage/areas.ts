import type { Camera } from '../optics/camera.ts';
import type { Window } from '../sight/sight.ts';
import { seenWithin, type FoundSight } from '../sight/sightOf.ts';
import type { Area } from './area.ts';
import { areasWhere, type FoundArea } from './areaWhere.ts';
import { conditionSets } from './conditions.ts';
import type { CameraAreas, Cells } from './coverage.ts';
import type { BandRule } from './rule.ts';
import { HIDDEN, SCREENED } from './state.ts';
import { areaOf, tallyStates } from './tally.ts';

/** Where areas are counted: one number a cell, 1 within, and the same ground as convex polygons. */
export interface Within {
  readonly mask: Uint8Array;
  /** All of it, and what of it lies inside solids. */
  readonly total: Area;
  readonly inside: Area;
  readonly parts: readonly Window[];
  /** The parts are the whole window of the sight. */
  readonly whole: boolean;
}

/** Areas of one camera: what is seen and its bands from the exact outline, the rest from cells. */
export function areasOf(
  camera: Camera,
  cells: Cells,
  found: FoundSight,
  within: Within,
  rule: BandRule,
  solids: number,
): CameraAreas {
  const { grid } = cells;
  const { states, hiders } = tallyStates(cells, within.mask, solids);
  const [seen, ...atLeast] = seenAreas(camera, found, within, rule, grid.plane.origin[2]);
  const covered = atLeast[0] ?? seen ?? NOTHING;
  const hidden = areaOf(states, HIDDEN, grid);
  const screened = areaOf(states, SCREENED, grid);
  const coarse = exact(less(seen ?? NOTHING, covered));
  const framed = [hidden, screened, exact(covered), coarse, within.inside];
  return {
    seen: exact(seen ?? NOTHING),
    byState: {
      inside: within.inside,
      'out of frame': {
        value: Math.max(0, framed.reduce((left, { value }) => left - value, within.total.value)),
        bound: framed.reduce((sum, { bound }) => sum + bound, within.total.bound),
        how: 'cells',
      },
      hidden,
      screened,
      'too dark': exact(NOTHING),
      'too coarse': coarse,
      covered: exact(covered),
    },
    byBand: atLeast.map((area, band) => exact(less(area, atLeast[band + 1] ?? NOTHING))),
    byHider: Array.from({ length: solids }, (_, solid) => ({ solid, area: areaOf(hiders, solid, grid) }))
      .filter(({ area }) => area.value > 0)
      .sort((one, two) => two.area.value - one.area.value),
  };
}

const NOTHING: FoundArea = { value: 0, bound: 0 };

/** Seen, then seen at each band or better, over all parts of the ground that counts. */
function seenAreas(
  camera: Camera,
  found: FoundSight,
  within: Within,
  rule: BandRule,
  height: number,
): readonly FoundArea[] {
  const { footing, sight } = found;
  const { of, count, framed, atLeast } = conditionSets(camera, height, rule);
  const sets = [framed, ...atLeast];
  const regions = within.whole ? [sight.seen] : within.parts.map((part) => seenWithin(found, part));
  const sums = sets.map(() => ({ value: 0, bound: 0 }));
  for (const { triangles, area } of regions) {
    const local = triangles.map((n, at) => n - (at % 2 === 0 ? footing.foot[0] : footing.foot[1]));
    areasWhere(local, of, count, sets, footing.delta).forEach(({ value, bound }, set) => {
      const sum = sums[set];
      if (sum === undefined) return;
      // The outline of a rectilinear lens has its area from its edges, better than from its triangles.
      sum.value += set === 0 && sight.framed ? area : value;
      sum.bound += bound;
    });
  }
  return sums;
}

const exact = ({ value, bound }: FoundArea): Area => ({ value, bound, how: 'exact' });

const less = (one: FoundArea, two: FoundArea): FoundArea => ({
  value: Math.max(0, one.value - two.value),
  bound: one.bound + two.bound,
});
