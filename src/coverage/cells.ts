import { scale, subtract } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import type { Grid } from '../sight/grid.ts';
import { clearNearest, fillNearest, nothingNearest, type Nearest } from '../sight/raster.ts';
import { rowSpansOf } from '../sight/rowSpans.ts';
import type { FoundSight } from '../sight/sightOf.ts';
import type { Cells } from './coverage.ts';
import type { BandRule } from './rule.ts';
import { COVERED, HIDDEN, INSIDE, SCREENED, TOO_COARSE } from './state.ts';

/** Buffers that one worker keeps between cameras, so that a drag allocates nothing for depth. */
export class Scratch {
  private solids: Nearest = nothingNearest(0);
  private screens: Nearest = nothingNearest(0);

  /** Two cleared buffers for so many cells. */
  cleared(cells: number): { readonly solids: Nearest; readonly screens: Nearest } {
    if (this.solids.solid.length !== cells) {
      this.solids = nothingNearest(cells);
      this.screens = nothingNearest(cells);
    } else {
      clearNearest(this.solids);
      clearNearest(this.screens);
    }
    return { solids: this.solids, screens: this.screens };
  }
}

/** A plane whose normal rises more than this is level, and has no horizontal of its own. */
const LEVEL = 1 - 1e-9;

/**
 * State, band, density and hider of every cell of a grid for one camera, judged at cell centres with the half-planes of
 * its sight.
 * @param bare the state of each cell before any camera looks: INSIDE a solid, else OUT_OF_FRAME
 */
export function cellsOf(
  camera: Camera,
  found: FoundSight,
  grid: Grid,
  bare: Uint8Array,
  rule: BandRule,
  scratch: Scratch,
): Cells {
  const total = grid.columns * grid.rows;
  const cells: Cells = {
    grid,
    rows: rowSpansOf(grid, found.footing.foot, found.frame),
    state: bare.slice(),
    band: new Uint8Array(total),
    density: new Float32Array(total),
    across: Math.abs(grid.plane.normal[2]) > LEVEL ? null : new Float32Array(total),
    lost: rule.slopes.length > 0 ? new Uint8Array(total) : null,
    hider: new Int32Array(total).fill(-1),
  };
  const { solids, screens } = scratch.cleared(total);
  fillNearest(found.solids, grid, found.footing.foot, cells.rows, solids);
  if (found.screens.count > 0) fillNearest(found.screens, grid, found.footing.foot, cells.rows, screens);
  judge({ camera, found, cells, rule, solids: solids.solid, screens: screens.solid });
  return cells;
}

interface Judged {
  readonly camera: Camera;
  readonly found: FoundSight;
  readonly cells: Cells;
  readonly rule: BandRule;
  readonly solids: Int32Array;
  readonly screens: Int32Array;
}

function judge(judged: Judged): void {
  const { camera, cells } = judged;
  const { grid, rows, density, across } = cells;
  const { plane, cell } = grid;
  const field = new PixelField(camera);
  const step = scale(plane.u, cell);
  // A bent lens leaves density 0 outside its frame; for a rectilinear one the rows' spans are the frame.
  const bent = camera.k !== 1;
  const away = subtract(plane.origin, camera.eye);
  for (let row = 0; row < grid.rows; row += 1) {
    const [low, high] = [rows[row * 2] ?? 0, rows[row * 2 + 1] ?? -1];
    if (low > high) continue;
    const a = grid.left + (low + 0.5) * cell;
    const b = grid.bottom + (row + 0.5) * cell;
    const dx = away[0] + a * plane.u[0] + b * plane.v[0];
    const dy = away[1] + a * plane.u[1] + b * plane.v[1];
    const dz = away[2] + a * plane.u[2] + b * plane.v[2];
    const from = row * grid.columns + low;
    field.fillRow(dx, dy, dz, step, high - low + 1, density, from);
    for (let at = 0; at <= high - low; at += 1) {
      if (bent && density[from + at] === 0) continue;
      const [x, y, z] = [dx + at * step[0], dy + at * step[1], dz + at * step[2]];
      settle(judged, from + at, x, y, -z);
      if (across !== null) across[from + at] = field.along(x, y, z, plane.u);
    }
  }
}

/** State, band and hider of a cell in the frame. */
function settle(judged: Judged, index: number, dx: number, dy: number, rise: number): void {
  const { state, band, density, hider, lost } = judged.cells;
  if (state[index] === INSIDE) return;
  const behind = judged.found.sight.lensInside ?? judged.solids[index] ?? -1;
  if (behind >= 0) {
    state[index] = HIDDEN;
    hider[index] = behind;
    return;
  }
  const through = judged.screens[index] ?? -1;
  if (through >= 0) {
    state[index] = SCREENED;
    hider[index] = through;
    return;
  }
  const reached = judged.rule.band(density[index] ?? 0, dx, dy, rise);
  band[index] = reached;
  state[index] = reached > 0 ? COVERED : TOO_COARSE;
  if (lost !== null) lost[index] = judged.rule.lost;
}
