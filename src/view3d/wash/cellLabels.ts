import type { Assessment } from '../../assess/assessment.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import type { Grid } from '../../sight/grid.ts';

/** What a cell is painted as where its own judgement goes before the lens's: 0 nothing, 1 and up its band, this too dark. */
export const DARK_LABEL = 255;

/** What a cell is painted as that a closed screen hides and no camera covers. */
export const CLOSED_LABEL = 254;

/** States of a cell by their place in the list of coverage/state.ts. */
const [HIDDEN, TOO_DARK] = [2, 4];

/** One label a cell of a grid. */
export interface CellLabels {
  readonly labels: Uint8Array<ArrayBuffer>;
  readonly grid: Grid;
}

/** What cells are asked about: nothing; where screens have closed up; or all that is seen. */
export type Asked = 'nothing' | 'screens' | 'all';

/** Light at night, the side from which a face is seen and closing screens are not in the shader that evaluates the lens. */
export function askedOfCells({ scene, question: { target } }: Assessment): Asked {
  if (scene.night !== null || (target.kind === 'face' && target.looks !== undefined)) return 'all';
  return scene.solids.some(({ sheets }) => sheets) ? 'screens' : 'nothing';
}

/** The best band of each cell over the cameras that count; too dark where one of them would see it in the light. */
export function cellLabels({ site, scene }: Assessment, counted: readonly CameraCoverage[]): CellLabels {
  const { grid, band } = site;
  const labels = new Uint8Array(band);
  const closes = scene.solids.map(({ passage }) => passage === 'screen');
  for (const { cells } of counted)
    for (let cell = 0; cell < labels.length; cell += 1) {
      const label = labels[cell] ?? 0;
      if (label > 0 && label !== CLOSED_LABEL) continue;
      if (cells.state[cell] === TOO_DARK) labels[cell] = DARK_LABEL;
      else if (cells.state[cell] === HIDDEN && closes[cells.hider[cell] ?? -1]) labels[cell] = CLOSED_LABEL;
    }
  return { labels, grid };
}
