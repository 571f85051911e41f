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

/**
 * State, band, density and hider of every cell of a horizontal grid for one camera, judged at cell centres with the
 * half-planes of its sight.
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
  const { grid, rows, density } = cells;
  const field = new PixelField(camera);
  const rise = camera.eye[2] - grid.plane.origin[2];
  // A bent lens leaves density 0 outside its frame; for a rectilinear one the rows' spans are the frame.
  const bent = camera.k !== 1;
  for (let row = 0; row < grid.rows; row += 1) {
    const [low, high] = [rows[row * 2] ?? 0, rows[row * 2 + 1] ?? -1];
    if (low > high) continue;
    const dy = grid.bottom + (row + 0.5) * grid.cell - camera.eye[1];
    const dx = grid.left + (low + 0.5) * grid.cell - camera.eye[0];
    const from = row * grid.columns + low;
    field.fillRow(dx, dy, -rise, grid.cell, high - low + 1, density, from);
    for (let index = from; index <= from + high - low; index += 1)
      if (!bent || density[index] !== 0) settle(judged, index, dx + (index - from) * grid.cell, dy, rise);
  }
}

/** State, band and hider of a cell in the frame. */
function settle(judged: Judged, index: number, dx: number, dy: number, rise: number): void {
  const { state, band, density, hider } = judged.cells;
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
  const reached = judged.rule.band(density[index] ?? 0, Math.sqrt(dx * dx + dy * dy), rise);
  band[index] = reached;
  state[index] = reached > 0 ? COVERED : TOO_COARSE;
}
