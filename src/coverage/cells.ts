import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import type { Grid } from '../sight/grid.ts';
import { clearNearest, fillNearest, nothingNearest, type Nearest, type RowSpans } from '../sight/raster.ts';
import { rowSpansOf } from '../sight/rowSpans.ts';
import type { FoundSight } from '../sight/sightOf.ts';
import type { Cells } from './coverage.ts';
import type { BandRule } from './rule.ts';
import { COVERED, HIDDEN, INSIDE, OUT_OF_FRAME, SCREENED, TOO_COARSE } from './state.ts';

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
 * @param inside one number a cell, 1 within a solid
 */
export function cellsOf(
  camera: Camera,
  found: FoundSight,
  grid: Grid,
  inside: Uint8Array,
  rule: BandRule,
  scratch: Scratch,
): Cells {
  const total = grid.columns * grid.rows;
  const cells: Cells = {
    grid,
    state: new Uint8Array(total),
    band: new Uint8Array(total),
    density: new Float32Array(total),
    hider: new Int32Array(total).fill(-1),
  };
  for (let index = 0; index < total; index += 1) cells.state[index] = inside[index] === 1 ? INSIDE : OUT_OF_FRAME;
  const framed = camera.k === 1;
  const rows = rowSpansOf(grid, found.footing.foot, framed ? found.frame : []);
  const { solids, screens } = scratch.cleared(total);
  fillNearest(found.solids, grid, found.footing.foot, rows, solids);
  if (found.screens.count > 0) fillNearest(found.screens, grid, found.footing.foot, rows, screens);
  judge({ camera, found, cells, rows, rule, solids: solids.solid, screens: screens.solid, framed });
  return cells;
}

interface Judged {
  readonly camera: Camera;
  readonly found: FoundSight;
  readonly cells: Cells;
  readonly rows: RowSpans;
  readonly rule: BandRule;
  readonly solids: Int32Array;
  readonly screens: Int32Array;
  readonly framed: boolean;
}

function judge({ camera, found, cells, rows, rule, solids, screens, framed }: Judged): void {
  const field = new PixelField(camera);
  const { grid, state, band, density, hider } = cells;
  const lensInside = found.sight.lensInside;
  const rise = camera.eye[2] - grid.plane.origin[2];
  for (let row = 0; row < grid.rows; row += 1) {
    const dy = grid.bottom + (row + 0.5) * grid.cell - camera.eye[1];
    const last = row * grid.columns + (rows[row * 2 + 1] ?? -1);
    for (let index = row * grid.columns + (rows[row * 2] ?? 0); index <= last; index += 1) {
      const dx = grid.left + (index - row * grid.columns + 0.5) * grid.cell - camera.eye[0];
      if (!field.at(dx, dy, -rise) && !framed) continue;
      density[index] = field.density;
      if (state[index] === INSIDE) continue;
      const behind = lensInside ?? solids[index] ?? -1;
      const through = screens[index] ?? -1;
      if (behind >= 0) {
        state[index] = HIDDEN;
        hider[index] = behind;
      } else if (through >= 0) {
        state[index] = SCREENED;
        hider[index] = through;
      } else {
        const reached = rule.band(field.density, Math.sqrt(dx * dx + dy * dy), rise);
        band[index] = reached;
        state[index] = reached > 0 ? COVERED : TOO_COARSE;
      }
    }
  }
}
