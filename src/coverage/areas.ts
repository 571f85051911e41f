import type { Camera } from '../optics/camera.ts';
import type { Passage } from '../model/passage.ts';
import type { Solid } from '../model/solid.ts';
import type { Window } from '../sight/sight.ts';
import { seenWithin, type FoundSight } from '../sight/sightOf.ts';
import { less, NO_AREA, plus, type Area } from './area.ts';
import { areasWhere, type FoundArea } from './areaWhere.ts';
import { causesOf } from './causes.ts';
import { conditionSets, type ConditionSets, type SignedSet } from './conditions.ts';
import type { CameraAreas, Cells, HiderArea } from './coverage.ts';
import { FROM_THE_SIDE, TOO_STEEP, type BandRule } from './rule.ts';
import { areaOf, tally, tallyHiders } from './tally.ts';

/** Where areas are counted: one number a cell, 1 within, and the same ground as convex polygons. */
export interface Within {
  readonly mask: Uint8Array;
  /** All of it, and what of it lies inside solids. */
  readonly total: Area;
  readonly inside: Area;
  /** Triangles of the plane inside solids; null where only cells can tell. */
  readonly cut: Float64Array | null;
  readonly parts: readonly Window[];
  /** The parts are the whole window of the sight. */
  readonly whole: boolean;
}

/**
 * Areas of one camera from exact outlines and curves. What hides how much comes from cells where `causes` is quick, and
 * where borders do not close.
 */
export function areasOf(
  camera: Camera,
  cells: Cells,
  found: FoundSight,
  within: Within,
  rule: BandRule,
  solids: readonly Solid[],
  causes: 'quick' | 'exact',
): CameraAreas {
  const conditions = conditionSets(camera, found.footing, rule);
  const [seen, ...atLeast] = seenAreas(found, within, conditions, [
    conditions.framed,
    ...conditions.atLeast,
  ]).map(exact);
  const covered = atLeast[0] ?? seen ?? NO_AREA;
  const coarse = less(seen ?? NO_AREA, covered);
  const { byHider, inside } = hiddenAreas(cells, found, within, conditions, solids, causes);
  const sum = (passage: Passage) =>
    byHider.reduce(
      (all, { solid, area }) => (solids[solid]?.passage === passage ? plus(all, area) : all),
      NO_AREA,
    );
  const [hidden, screened] = [sum('solid'), sum('screen')];
  const framed = [hidden, screened, covered, coarse, within.inside].reduce(plus);
  return {
    seen: seen ?? NO_AREA,
    byState: {
      inside: within.inside,
      'out of frame': less(within.total, framed),
      hidden,
      screened,
      'too dark': NO_AREA,
      'too coarse': coarse,
      covered,
    },
    insideFrame: inside,
    byBand: atLeast.map((area, band) => less(area, atLeast[band + 1] ?? NO_AREA)),
    byHider: byHider
      .filter(({ solid, area }) => area.value > LEAST_SHOWN && solids[solid]?.passage === 'solid')
      .sort((one, two) => two.area.value - one.area.value),
    lost: causes === 'exact' ? lostAreas(found, within, conditions) : lostCells(cells, within.mask),
  };
}

/** An area below this is rounding, m². */
const LEAST_SHOWN = 1e-6;

function hiddenAreas(
  cells: Cells,
  found: FoundSight,
  within: Within,
  conditions: ConditionSets,
  solids: readonly Solid[],
  causes: 'quick' | 'exact',
): { readonly byHider: readonly HiderArea[]; readonly inside: Area } {
  const exactly =
    causes === 'exact' && within.cut !== null ? causesOf(found, within.parts, within.cut, conditions) : null;
  if (exactly)
    return {
      byHider: [...exactly.byHider].map(([solid, area]) => ({ solid, area: exact(area) })),
      inside: exact(exactly.inside),
    };
  const { hiders, inside } = tallyHiders(cells, within.mask, solids.length);
  return {
    byHider: solids.map((_, solid) => ({ solid, area: areaOf(hiders, solid, cells.grid) })),
    inside: areaOf(inside, 0, cells.grid),
  };
}

/** Where faces fall below the band of their density, along the limits' own curves. */
function lostAreas(found: FoundSight, within: Within, conditions: ConditionSets): CameraAreas['lost'] {
  const { lowered, loweredFromSide } = conditions;
  const signed = (sets: readonly SignedSet[]): Area =>
    seenAreas(
      found,
      within,
      conditions,
      sets.map(({ set }) => set),
    ).reduce<Area>(
      (sum, { value, bound }, at) => ({
        value: sum.value + (sets[at]?.sign ?? 1) * value,
        bound: sum.bound + bound,
        how: 'exact',
      }),
      NO_AREA,
    );
  if (lowered.length === 0) return { tooSteep: NO_AREA, fromTheSide: NO_AREA };
  const [all, fromTheSide] = [signed(lowered), signed(loweredFromSide)];
  return {
    tooSteep: less(all, fromTheSide),
    fromTheSide: { ...fromTheSide, value: Math.max(0, fromTheSide.value) },
  };
}

/** The same from cells. */
function lostCells({ lost, grid }: Cells, mask: Uint8Array): CameraAreas['lost'] {
  if (lost === null) return { tooSteep: NO_AREA, fromTheSide: NO_AREA };
  const counts = tally(grid, lost, mask, 3);
  return { tooSteep: areaOf(counts, TOO_STEEP, grid), fromTheSide: areaOf(counts, FROM_THE_SIDE, grid) };
}

/** Areas of seen ground in which each set of conditions holds, over all parts of the ground that counts. */
function seenAreas(
  found: FoundSight,
  within: Within,
  conditions: ConditionSets,
  sets: readonly (readonly number[])[],
): readonly FoundArea[] {
  const { footing, sight } = found;
  const { of, count } = conditions;
  const regions = within.whole ? [sight.seen] : within.parts.map((part) => seenWithin(found, part));
  const sums = sets.map(() => ({ value: 0, bound: 0 }));
  for (const { triangles, area } of regions) {
    const local = triangles.map((n, at) => n - (at % 2 === 0 ? footing.foot[0] : footing.foot[1]));
    areasWhere(local, of, count, sets, [{ p: 0, q: 0, delta: footing.delta }]).forEach(
      ({ value, bound }, set) => {
        const sum = sums[set];
        if (sum === undefined) return;
        // The outline of a rectilinear lens has its area from its edges, better than from its triangles.
        sum.value += sets[set]?.length === 0 ? area : value;
        sum.bound += bound;
      },
    );
  }
  return sums;
}

const exact = ({ value, bound }: FoundArea): Area => ({ value: Math.max(0, value), bound, how: 'exact' });
