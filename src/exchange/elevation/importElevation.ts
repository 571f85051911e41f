import { accept, refuse, type Outcome } from '../../base/fault.ts';
import type { GridGround } from '../../model/ground.ts';
import { LIMITS } from '../../plan/limits.ts';
import { Tally, type ImportReport } from '../report.ts';
import { gridFromText } from './gridText.ts';

/** Ground out of a file, with what was taken of it. */
export interface ImportedGround {
  readonly ground: GridGround;
  readonly report: ImportReport;
}

/**
 * The ground in an ASCII grid of heights, moved so that the middle of the grid is the origin of the site and the whole metre below
 * its lowest height is z = 0. Cells and heights count as metres, since the format names no unit; degrees are refused.
 */
export function importElevation(text: string): Outcome<ImportedGround> {
  const read = gridFromText(text);
  if (!read.ok) return read;
  const { columns, rows, cell, left, bottom, heights } = read.value;
  const size = Math.max(columns, rows) * cell;
  if (size > 2 * LIMITS.coordinate.most)
    return refuse({
      code: 'elevation.wide',
      path: [],
      given: size,
      allowed: String(2 * LIMITS.coordinate.most),
    });
  let [least, most, unknown] = [Infinity, -Infinity, 0];
  for (const height of heights) {
    if (height === null) unknown += 1;
    else [least, most] = [Math.min(least, height), Math.max(most, height)];
  }
  if (unknown === heights.length) return refuse({ code: 'elevation.empty', path: [] });
  const datum = Math.floor(least);
  if (most - datum > LIMITS.level.most)
    return refuse({
      code: 'elevation.relief',
      path: [],
      given: Math.ceil(most - least),
      allowed: String(LIMITS.level.most),
    });
  const [x, y] = [left + (columns * cell) / 2, bottom + (rows * cell) / 2];
  const [taken, gone, assumed] = [new Tally(), new Tally(), new Tally()];
  for (let cells = unknown; cells < heights.length; cells += 1) taken.add('taken.height');
  for (let cells = 0; cells < unknown; cells += 1) gone.add('left.height');
  assumed.add('assumed.metres');
  assumed.add('assumed.middle', `${x}, ${y}`);
  assumed.add('assumed.datum', `${datum} m`);
  return accept({
    ground: {
      kind: 'grid',
      left: (-columns * cell) / 2,
      bottom: (-rows * cell) / 2,
      cell,
      columns,
      rows,
      // Whole tenths of a millimetre: the difference of two heights has bits that nobody measured.
      heights: heights.map((height) => (height === null ? null : Math.round((height - datum) * 1e4) / 1e4)),
      got: 'mapped',
    },
    report: { taken: taken.report(), left: gone.report(), assumed: assumed.report() },
  });
}
