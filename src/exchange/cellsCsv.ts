import { degreesFromRad } from '../base/angle.ts';
import type { Band } from '../coverage/band.ts';
import type { Cells } from '../coverage/coverage.ts';
import type { Solid } from '../model/solid.ts';
import type { Camera } from '../optics/camera.ts';
import { objIds } from './obj.ts';

/** The first line of the file; a wall, roof or patch has px/m along its own horizontal as a last column. */
const CELLS_HEAD = 'x,y,z,state,band,density,depression,hidden_by';

/** What `coverage/state.ts` lists, which only its types may cross into this room. */
type States = readonly string[];

/**
 * The cells of one camera as CSV, a piece of text a row of the grid, south first: centre (m), state, band, density
 * (px/m), depression (°) and the OBJ's id of what hides it. Band only where covered; density and depression only in the
 * frame and outside solids; `hidden_by` only where hidden.
 * @param states words of the states, by number
 * @param bands  of the edition, coarsest first
 * @param heights z of each target over uneven ground, m; left out on a plane
 */
export function* cellsCsv(
  camera: Camera,
  cells: Cells,
  states: States,
  bands: readonly Band[],
  solids: readonly Pick<Solid, 'id'>[],
  heights?: Float64Array,
): Generator<string, void> {
  const { grid, state, band, density, hider, across } = cells;
  const { origin, u, v } = grid.plane;
  const { eye } = camera;
  const ids = objIds(solids);
  yield `${CELLS_HEAD}${across === null ? '' : ',across'}\n`;
  for (let row = 0; row < grid.rows; row += 1) {
    const b = grid.bottom + (row + 0.5) * grid.cell;
    const lines: string[] = [];
    for (let column = 0; column < grid.columns; column += 1) {
      const index = row * grid.columns + column;
      const a = grid.left + (column + 0.5) * grid.cell;
      const x = origin[0] + a * u[0] + b * v[0];
      const y = origin[1] + a * u[1] + b * v[1];
      const z = heights?.[index] ?? origin[2] + a * u[2] + b * v[2];
      const word = states[state[index] ?? 0] ?? '';
      const framed = word !== 'inside' && word !== 'out of frame';
      lines.push(
        [
          x.toFixed(4),
          y.toFixed(4),
          z.toFixed(4),
          word,
          bands[(band[index] ?? 0) - 1]?.key ?? '',
          framed ? (density[index] ?? 0).toFixed(3) : '',
          framed ? degreesFromRad(Math.atan2(eye[2] - z, Math.hypot(eye[0] - x, eye[1] - y))).toFixed(3) : '',
          word === 'hidden' ? (ids[hider[index] ?? -1] ?? '') : '',
          ...(across === null ? [] : [framed ? (across[index] ?? 0).toFixed(3) : '']),
        ].join(','),
      );
    }
    yield `${lines.join('\n')}\n`;
  }
}
