import { scale, subtract } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import type { Grid } from '../sight/grid.ts';
import { clearNearest, fillOwners, FillScratch, nothingNearest, type Nearest } from '../sight/raster.ts';
import { rowSpansOf } from '../sight/rowSpans.ts';
import type { FoundSight } from '../sight/sightOf.ts';
import type { Cells } from './coverage.ts';
import type { BandRule } from './rule.ts';
import { closedCells } from './closedCells.ts';
import type { Lit } from './conditions.ts';
import { COVERED, HIDDEN, INSIDE, SCREENED, TOO_COARSE, TOO_DARK } from './state.ts';

/** Buffers that one worker keeps between cameras, so that a drag allocates nothing for depth. */
export class Scratch {
  readonly fill = new FillScratch();
  private readonly buffers = new Map<string, Nearest>();
  private readonly names = new Map<string, Int32Array>();

  /** Room for an index a cell, as it was left; one a use. */
  owners(use: 'solids' | 'screens' | 'glass', cells: number): Int32Array {
    const known = this.names.get(use);
    if (known?.length === cells) return known;
    const made = new Int32Array(cells);
    this.names.set(use, made);
    return made;
  }

  /** A cleared buffer for so many cells; one a use, so that several are at hand at once. */
  cleared(use: 'solids' | 'screens' | 'sheet' | 'closed' | 'glass', cells: number): Nearest {
    const known = this.buffers.get(use);
    if (known?.solid.length === cells) {
      clearNearest(known);
      return known;
    }
    const made = nothingNearest(cells);
    this.buffers.set(use, made);
    return made;
  }
}

/** A plane whose normal rises more than this is level, and has no horizontal of its own. */
const LEVEL = 1 - 1e-9;

/** What lights the cells of a grid for one camera. */
export interface NightHere {
  /** One a cell: 1 where lamps light it enough; null where there are none. */
  readonly lamps: Uint8Array | null;
  /** The camera's own. */
  readonly infrared: Lit | null;
}

/**
 * State, band, density and hider of every cell of a grid for one camera, judged at cell centres with the half-planes of
 * its sight.
 * @param bare  the state of each cell before any camera looks: INSIDE a solid, else OUT_OF_FRAME
 * @param night null by day
 */
export function cellsOf(
  camera: Camera,
  found: FoundSight,
  grid: Grid,
  bare: Uint8Array,
  rule: BandRule,
  scratch: Scratch,
  night: NightHere | null = null,
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
  const filled = (use: 'solids' | 'screens' | 'glass'): Int32Array | null => {
    const shadows = found[use];
    if (shadows.count === 0) return null;
    const owners = scratch.owners(use, total);
    fillOwners(shadows, grid, found.footing.foot, cells.rows, owners, scratch.fill);
    return owners;
  };
  judge({
    camera,
    found,
    cells,
    rule,
    solids: filled('solids'),
    screens: filled('screens'),
    closed: closedCells(found, grid, cells.rows, scratch),
    night,
    glass: night === null ? null : filled('glass'),
  });
  return cells;
}

interface Judged {
  readonly camera: Camera;
  readonly found: FoundSight;
  readonly cells: Cells;
  readonly rule: BandRule;
  /** What is nearest over each cell; null where nothing of the kind is in the frame. */
  readonly solids: Int32Array | null;
  readonly screens: Int32Array | null;
  readonly closed: Int32Array | null;
  readonly night: NightHere | null;
  readonly glass: Int32Array | null;
}

/** State, band and hider of each cell in the frame. In one piece, since it runs for every cell of every step of a drag. */
function judge({ camera, found, cells, rule, solids, screens, closed, night, glass }: Judged): void {
  const { grid, rows, state, band, density, across, hider, lost } = cells;
  const { plane, cell } = grid;
  const field = new PixelField(camera);
  const step = scale(plane.u, cell);
  const [sx, sy, sz] = step;
  // Where a target is handed over without allocating it.
  const { here } = rule;
  const everywhere = found.sight.lensInside ?? -1;
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
      const index = from + at;
      if (bent && density[index] === 0) continue;
      if (across !== null) across[index] = field.along(dx + at * sx, dy + at * sy, dz + at * sz, plane.u);
      if (state[index] === INSIDE) continue;
      const through = screens === null ? -1 : (screens[index] ?? -1);
      const behind = everywhere >= 0 ? everywhere : over(solids, closed, index);
      if (behind >= 0 || through >= 0) {
        state[index] = behind >= 0 ? HIDDEN : SCREENED;
        hider[index] = behind >= 0 ? behind : through;
        continue;
      }
      const x = dx + at * sx;
      const y = dy + at * sy;
      const z = dz + at * sz;
      if (night !== null && !isLit(night, glass, index, x, y, z)) {
        state[index] = TOO_DARK;
        continue;
      }
      here[0] = density[index] ?? 0;
      here[1] = x;
      here[2] = y;
      here[3] = -z;
      const reached = rule.bandHere();
      band[index] = reached;
      state[index] = reached > 0 ? COVERED : TOO_COARSE;
      if (lost !== null) lost[index] = rule.lost;
    }
  }
}

/** What hides a cell: a solid before any screen that has closed up. */
function over(solids: Int32Array | null, closed: Int32Array | null, index: number): number {
  const solid = solids?.[index] ?? -1;
  return solid >= 0 ? solid : (closed?.[index] ?? -1);
}

/** Whether lamps or the camera's own infrared light a target in the frame, given from the lens. */
export function isLit(
  { lamps, infrared }: NightHere,
  glass: Int32Array | null,
  index: number,
  dx: number,
  dy: number,
  dz: number,
): boolean {
  if (lamps?.[index] === 1) return true;
  return infrared !== null && (glass?.[index] ?? -1) < 0 && infrared(dx, dy, dz) >= 0;
}
