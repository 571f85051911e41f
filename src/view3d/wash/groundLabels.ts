import type { CameraCoverage, SiteCoverage } from '../../coverage/coverage.ts';
import type { COVERED, HIDDEN, SCREENED, TOO_COARSE, TOO_DARK } from '../../coverage/state.ts';
import type { CellLabels } from './cellLabels.ts';

// Codes of states; the compiler holds them to those of coverage.
const HIDDEN_CELL: typeof HIDDEN = 2;
const SCREENED_CELL: typeof SCREENED = 3;
const DARK_CELL: typeof TOO_DARK = 4;
const COARSE_CELL: typeof TOO_COARSE = 5;
const COVERED_CELL: typeof COVERED = 6;

/** The coarsest band among the states of a pixel that readWash.ts tells; lesser ones are at these places below it. */
const BAND_LABEL = 5;
const LABEL_OF: Readonly<Record<number, number>> = {
  [HIDDEN_CELL]: 1,
  [SCREENED_CELL]: 2,
  [DARK_CELL]: 3,
  [COARSE_CELL]: 4,
};

/**
 * What each cell of uneven ground is painted as, in the numbers of readWash.ts: of all cameras that count the one that does
 * best there. There is no outline over uneven ground, so that cells alone tell.
 */
export function groundLabels(
  { grid }: Pick<SiteCoverage, 'grid'>,
  counted: readonly Pick<CameraCoverage, 'cells'>[],
): CellLabels {
  const labels = new Uint8Array(grid.columns * grid.rows);
  for (const { cells } of counted)
    cells.eachRun((from, to, state) => {
      const own = LABEL_OF[state] ?? 0;
      for (let cell = from; cell <= to; cell += 1) {
        const label = state === COVERED_CELL ? BAND_LABEL - 1 + (cells.band[cell] ?? 0) : own;
        if (label > (labels[cell] ?? 0)) labels[cell] = label;
      }
    });
  return { labels, grid };
}
