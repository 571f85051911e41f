import type { Area } from '../../coverage/area.ts';
import type { Cells } from '../../coverage/coverage.ts';
import { ringsMask } from '../../coverage/mask.ts';
import { areaOf, tally } from '../../coverage/tally.ts';
import type { Assessment } from '../assessment.ts';
import { exchange, type TrialChange } from './change.ts';

/** The exchange between two settings where only cells can tell: at night, over uneven ground, on walls. */
export function changeOfCells({ surface, scene, edition }: Assessment, one: Cells, two: Cells): TrialChange {
  const { grid } = one;
  const rings = surface?.rings ?? (scene.boundary === null ? null : [scene.boundary]);
  const mask = rings === null ? one.band.map(() => 1) : ringsMask(rings, grid);
  const bands = { one: one.band, two: two.band };
  const labels = new Uint8Array(grid.columns * grid.rows);
  return exchange(edition.bands.length, (from, to, band, than): Area => {
    const [before, after] = [bands[from], bands[to]];
    for (let cell = 0; cell < labels.length; cell += 1)
      labels[cell] = (after[cell] ?? 0) > band && (before[cell] ?? 0) <= than ? 1 : 0;
    const { value, bound, how } = areaOf(tally(grid, labels, mask, 2), 1, grid);
    // A part thinner than a cell may have been missed: never said to be nothing for sure.
    return { value, bound: bound + grid.cell ** 2, how };
  });
}
