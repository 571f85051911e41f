import type { Camera } from '../optics/camera.ts';
import { seenWithin, type FoundSight } from '../sight/sightOf.ts';
import type { Window } from '../sight/sight.ts';
import { areaWhere, type FoundArea } from './areaWhere.ts';
import type { Area } from './area.ts';
import { bandConditions, frameConditions } from './conditions.ts';
import type { CameraAreas, Cells } from './coverage.ts';
import type { BandRule } from './rule.ts';
import { COVERED, HIDDEN, STATES, TOO_COARSE, type State } from './state.ts';
import { areaOf, NOT_COUNTED, tally } from './tally.ts';

/** Where areas are counted: one number a cell, 1 within, and the same ground as convex polygons. */
export interface Within {
  readonly mask: Uint8Array;
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
  bands: number,
  solids: number,
): CameraAreas {
  const { grid } = cells;
  const total = cells.state.length;
  const labels = new Int16Array(total);
  const label = (of: (index: number) => number) => {
    for (let index = 0; index < total; index += 1) labels[index] = within.mask[index] === 1 ? of(index) : NOT_COUNTED;
    return labels;
  };
  const states = tally(
    grid,
    label((index) => cells.state[index] ?? 0),
    STATES.length,
  );
  const byHider = tally(
    grid,
    label((index) => hiderOf(cells, index)),
    solids + 1,
  );
  const { seen, atLeast } = seenAreas(camera, found, within, rule, bands, grid.plane.origin[2]);
  const byState = Object.fromEntries(STATES.map((state, at) => [state, areaOf(states, at, grid)])) as Record<State, Area>;
  const covered = atLeast[0] ?? seen;
  return {
    seen: curveArea(seen),
    byState: { ...byState, [STATES[COVERED]]: curveArea(covered), [STATES[TOO_COARSE]]: curveArea(less(seen, covered)) },
    byBand: atLeast.map((area, band) => curveArea(less(area, atLeast[band + 1] ?? { value: 0, bound: 0 }))),
    byHider: Array.from({ length: solids }, (_, solid) => ({ solid, area: areaOf(byHider, solid + 1, grid) }))
      .filter(({ area }) => area.value > 0)
      .sort((one, two) => two.area.value - one.area.value),
  };
}

const hiderOf = (cells: Cells, index: number): number =>
  cells.state[index] === HIDDEN ? (cells.hider[index] ?? -1) + 1 : 0;

/** Seen, and seen at each band or better, over all parts of the ground that counts. */
function seenAreas(
  camera: Camera,
  found: FoundSight,
  within: Within,
  rule: BandRule,
  bands: number,
  height: number,
): { readonly seen: FoundArea; readonly atLeast: readonly FoundArea[] } {
  const { footing, sight } = found;
  const regions = within.whole ? [sight.seen] : within.parts.map((part) => seenWithin(found, part));
  const framing = frameConditions(camera, height);
  const sum = (of: (triangles: Float64Array, spans: number) => FoundArea): FoundArea =>
    regions.reduce<FoundArea>(
      (all, { triangles, area }) => {
        const one = of(
          triangles.map((n, at) => n - footing.foot[at % 2 === 0 ? 0 : 1]),
          area,
        );
        return { value: all.value + one.value, bound: all.bound + one.bound };
      },
      { value: 0, bound: 0 },
    );
  return {
    seen: sum((triangles, spans) =>
      sight.framed ? { value: spans, bound: 0 } : areaWhere(triangles, framing.of, framing.count, footing.delta),
    ),
    atLeast: Array.from({ length: bands }, (_, band) => {
      const { of, count } = bandConditions(camera, height, rule, band + 1);
      return sum((triangles) => areaWhere(triangles, of, count, footing.delta));
    }),
  };
}

const curveArea = ({ value, bound }: FoundArea): Area => ({ value, bound, how: 'exact' });

const less = (one: FoundArea, two: FoundArea): FoundArea => ({
  value: Math.max(0, one.value - two.value),
  bound: one.bound + two.bound,
});
