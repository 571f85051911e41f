import type { Assessment } from '../../assess/assessment.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { cos } from '../../base/angle.ts';
import { dot, length, subtract, type Vec3 } from '../../base/vector.ts';
import type { Infrared } from '../../optics/light.ts';
import { axesOf } from '../../optics/projection.ts';
import type { Grid } from '../../sight/grid.ts';
import { groundOf } from '../ground/terrainFaces.ts';
import { pointOn } from '../planeFrame.ts';
import { groundLabels } from './groundLabels.ts';

/** What a cell is painted as where its own judgement goes before the lens's: 0 nothing, 1 and up its band, this too dark. */
export const DARK_LABEL = 255;

/** What a cell is painted as that a closed screen hides and no camera covers. */
export const CLOSED_LABEL = 254;

/** States of a cell by their place in the list of coverage/state.ts. */
const [HIDDEN, SCREENED, TOO_DARK, COVERED] = [2, 3, 4, 6];

/** One label a cell of a grid. */
export interface CellLabels {
  readonly labels: Uint8Array<ArrayBuffer>;
  readonly grid: Grid;
}

/**
 * What cells are asked about: nothing; where screens have closed up; what lamps light besides; all that is seen; or, over
 * uneven ground, everything (groundLabels.ts).
 */
export type Asked = 'nothing' | 'screens' | 'lamps' | 'all' | 'ground';

/**
 * What the shader that evaluates the lens does not know: closing screens, what lamps light, and glass, which throws a
 * camera's own infrared back.
 */
export function askedOfCells({ scene, surface }: Assessment): Asked {
  const { night, solids } = scene;
  if (surface === null && groundOf(scene) !== null) return 'ground';
  if (night !== null && solids.some(({ passage }) => passage === 'clear')) return 'all';
  if (night !== null && night.lamps.length > 0) return 'lamps';
  return solids.some(({ sheets }) => sheets) ? 'screens' : 'nothing';
}

/** The cosine off the axis to which infrared of a full angle reaches; below all cosines where it shines all round. */
export const leastCosine = ({ beam }: Infrared): number => (beam >= 360 ? -2 : cos(beam / 2));

/** The best band of each cell over the cameras that count, as far as cells are asked; then what is dark or hidden by a closed screen. */
export function cellLabels(
  assessment: Assessment,
  counted: readonly CameraCoverage[],
  asked: Asked,
): CellLabels {
  const { site, scene } = assessment;
  const { grid } = site;
  if (asked === 'ground') return groundLabels(site, counted);
  const labels = new Uint8Array(grid.columns * grid.rows);
  if (asked === 'all') labels.set(site.band);
  if (asked === 'lamps') addLamps(labels, assessment, counted);
  const closes = scene.solids.map(({ passage }) => passage === 'screen');
  for (const { cells } of counted)
    cells.eachRun((from, to, state, hider) => {
      const isClosed = state === HIDDEN && closes[hider] === true;
      if (state !== TOO_DARK && !isClosed) return;
      const own = isClosed ? CLOSED_LABEL : asked === 'all' ? DARK_LABEL : 0;
      for (let cell = from; cell <= to; cell += 1) {
        const label = labels[cell] ?? 0;
        if (label === 0 || label === CLOSED_LABEL) labels[cell] = own;
      }
    });
  // Where one camera sees through the mesh that is closed to another.
  for (const { cells } of counted)
    cells.eachRun((from, to, state) => {
      if (state !== SCREENED) return;
      for (let cell = from; cell <= to; cell += 1) if (labels[cell] === CLOSED_LABEL) labels[cell] = 0;
    });
  return { labels, grid };
}

/** The bands that cameras have by the light of lamps alone, and one cell into what their own infrared lights too. */
function addLamps(labels: Uint8Array, { site, scene }: Assessment, counted: readonly CameraCoverage[]): void {
  const { grid, band } = site;
  const { columns, rows } = grid;
  for (const { camera, cells } of counted) {
    const lit = infraredOf(camera.eye, axesOf(camera).forward, scene.night?.infrared.get(camera.id));
    cells.eachRun((from, to, state) => {
      if (state !== COVERED) return;
      for (let cell = from; cell <= to; cell += 1) {
        const own = cells.band[cell] ?? 0;
        if (own <= (labels[cell] ?? 0)) continue;
        const a = grid.left + ((cell % columns) + 0.5) * grid.cell;
        const b = grid.bottom + (Math.floor(cell / columns) + 0.5) * grid.cell;
        if (!lit(pointOn(grid.plane, a, b))) labels[cell] = own;
      }
    });
  }
  const before = Uint8Array.from(labels);
  for (let cell = 0; cell < labels.length; cell += 1) {
    if ((before[cell] ?? 0) > 0 || (band[cell] ?? 0) === 0) continue;
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    const beside = Math.max(
      column > 0 ? (before[cell - 1] ?? 0) : 0,
      column + 1 < columns ? (before[cell + 1] ?? 0) : 0,
      row > 0 ? (before[cell - columns] ?? 0) : 0,
      row + 1 < rows ? (before[cell + columns] ?? 0) : 0,
    );
    labels[cell] = Math.min(beside, band[cell] ?? 0);
  }
}

/** Whether a camera's own infrared reaches a point with nothing in the way. */
function infraredOf(eye: Vec3, forward: Vec3, own: Infrared | undefined): (point: Vec3) => boolean {
  if (own === undefined) return () => false;
  const least = leastCosine(own);
  return (point) => {
    const away = subtract(point, eye);
    const far = length(away);
    return far <= own.range && dot(forward, away) >= least * far;
  };
}
