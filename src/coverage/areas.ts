import { seenWithin, type FoundSight } from '../sight/sightOf.ts';
import type { Window } from '../sight/sight.ts';
import { exactArea, type Area } from './area.ts';
import type { CameraAreas, Cells } from './coverage.ts';
import { COVERED, HIDDEN, STATES, TOO_COARSE, type State } from './state.ts';
import { areaOf, NOT_COUNTED, tally } from './tally.ts';

/** Where areas are counted: one number a cell, 1 within, and the same ground as convex polygons. */
export interface Within {
  readonly mask: Uint8Array;
  readonly parts: readonly Window[];
}

/** Areas of one camera's cells by state, band and hider; what is seen, exactly where the lens is rectilinear. */
export function areasOf(cells: Cells, found: FoundSight, within: Within, bands: number, solids: number): CameraAreas {
  const { grid } = cells;
  const total = cells.state.length;
  const labels = new Int16Array(total);
  const label = (of: (index: number) => number) => {
    for (let index = 0; index < total; index += 1) labels[index] = within.mask[index] === 1 ? of(index) : NOT_COUNTED;
    return labels;
  };
  const states = tally(grid, label((index) => cells.state[index] ?? 0), STATES.length);
  const byBand = tally(grid, label((index) => cells.band[index] ?? 0), bands + 1);
  const byHider = tally(grid, label((index) => hiderOf(cells, index)), solids + 1);
  return {
    seen: found.sight.framed
      ? exactArea(within.parts.reduce((sum, part) => sum + seenWithin(found, part), 0))
      : seenFromCells(cells, label),
    byState: Object.fromEntries(STATES.map((state, at) => [state, areaOf(states, at, grid)])) as Record<State, Area>,
    byBand: Array.from({ length: bands }, (_, band) => areaOf(byBand, band + 1, grid)),
    byHider: Array.from({ length: solids }, (_, solid) => ({ solid, area: areaOf(byHider, solid + 1, grid) }))
      .filter(({ area }) => area.value > 0)
      .sort((one, two) => two.area.value - one.area.value),
  };
}

const hiderOf = (cells: Cells, index: number): number =>
  cells.state[index] === HIDDEN ? (cells.hider[index] ?? -1) + 1 : 0;

function seenFromCells(cells: Cells, label: (of: (index: number) => number) => Int16Array): Area {
  const seen = label((index) => (cells.state[index] === COVERED || cells.state[index] === TOO_COARSE ? 1 : 0));
  return areaOf(tally(cells.grid, seen, 2), 1, cells.grid);
}
