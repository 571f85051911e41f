import { NO_CELLS, plus, type Area } from './area.ts';
import type { CameraAreas, Cells } from './coverage.ts';
import { hiddenCells } from './hiddenAreas.ts';
import { lostCells } from './lostAreas.ts';
import { COVERED, OUT_OF_FRAME, TOO_COARSE, TOO_DARK, STATES } from './state.ts';
import { areaOf, tally } from './tally.ts';
import type { Within } from './within.ts';

/** Areas of one camera over uneven ground, counted from cells: over ground as a map has it, not along the slope. */
export function unevenAreas(cells: Cells, within: Within, solids: number, bands: number): CameraAreas {
  const { grid, state, band } = cells;
  const byState = tally(grid, state, within.mask, STATES.length);
  const byBand = tally(grid, band, within.mask, bands + 1);
  const { byHider, screened, inside } = hiddenCells(cells, within, solids);
  const of = (index: number): Area => areaOf(byState, index, grid);
  const [covered, coarse, dark] = [of(COVERED), of(TOO_COARSE), of(TOO_DARK)];
  return {
    seen: [covered, coarse, dark].reduce(plus),
    byState: {
      inside: within.inside,
      'out of frame': of(OUT_OF_FRAME),
      hidden: byHider.map(({ area }) => area).reduce(plus, NO_CELLS),
      screened,
      'too dark': dark,
      'too coarse': coarse,
      covered,
    },
    insideFrame: inside,
    byBand: Array.from({ length: bands }, (_, at) => areaOf(byBand, at + 1, grid)),
    byHider: byHider.filter(({ area }) => area.value > 0).sort((one, two) => two.area.value - one.area.value),
    lost: lostCells(cells, within.mask),
  };
}
