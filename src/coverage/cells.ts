import type { Vec2 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import type { Grid } from '../sight/grid.ts';
import { OwnerRows } from '../sight/ownerRows.ts';
import { clearNearest, fillOwners, nothingNearest, type Nearest, type RowSpans } from '../sight/raster.ts';
import { rowSpansOf } from '../sight/rowSpans.ts';
import type { Shadows } from '../sight/shadows.ts';
import type { FoundSight } from '../sight/sightOf.ts';
import { AnyRows } from './anyRows.ts';
import { CellRows } from './cellRows.ts';
import { closedCells } from './closedCells.ts';
import type { Cells } from './coverage.ts';
import { JudgedCells, PlaneFields } from './judgedCells.ts';
import { LevelRows } from './levelRows.ts';
import type { NightHere } from './night.ts';
import type { RowJudge } from './rowJudge.ts';
import { runsWhere, RunWriter, type RowRuns } from './rowRuns.ts';
import type { BandRule } from './rule.ts';
import { INSIDE } from './state.ts';
import { sureRows } from './sureRows.ts';

/** Buffers that one worker keeps between cameras, so that a drag allocates little. */
export class Scratch {
  readonly writer = new RunWriter();
  readonly solids = new OwnerRows();
  readonly screens = new OwnerRows();
  readonly glass = new OwnerRows();
  private readonly buffers = new Map<string, Nearest>();
  private names = new Int32Array(0);
  /** What lies inside solids, by the states before any camera looks. */
  private readonly inside = new WeakMap<Uint8Array, RowRuns>();

  /** Room for an index a cell, as it was left. */
  owners(cells: number): Int32Array {
    if (this.names.length !== cells) this.names = new Int32Array(cells);
    return this.names;
  }

  /** The runs of the cells that lie inside solids. @param bare the state of each cell before any camera looks */
  insideRuns(bare: Uint8Array, { columns, rows }: Grid): RowRuns {
    const known = this.inside.get(bare);
    if (known) return known;
    const made = runsWhere(bare, INSIDE, columns, rows);
    this.inside.set(bare, made);
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
  const { foot } = found.footing;
  const rows = rowSpansOf(grid, foot, found.frame);
  const { writer } = scratch;
  writer.begin(grid.rows);
  const everywhere = found.sight.lensInside;
  const under = new CellRows(
    scratch.insideRuns(bare, grid),
    judgeOf(camera, found, grid, rule, rows, scratch, night),
  );
  const solids = over(found.solids, grid, foot, rows, scratch.solids);
  const screens = over(found.screens, grid, foot, rows, scratch.screens);
  const closed = closedCells(found, grid, rows, scratch);
  for (let row = 0; row < grid.rows; row += 1) {
    const [low, high] = [rows[row * 2] ?? 0, rows[row * 2 + 1] ?? -1];
    if (low <= high) {
      under.begin(row);
      if (everywhere !== null) under.hidden(low, high, everywhere);
      else {
        const screened = screens === null ? 0 : screens.lay(row);
        under.screens(screens?.runs ?? NONE, screened, closed, row * grid.columns);
        if (solids === null) under.beyond(low, high);
        else {
          const { runs } = solids;
          const count = solids.lay(row);
          for (let run = 0; run < count; run += 3) {
            const [from, to, solid] = [runs[run] ?? 0, runs[run + 1] ?? -1, runs[run + 2] ?? -1];
            if (solid < 0) under.beyond(from, to);
            else under.hidden(from, to, solid);
          }
        }
      }
    }
    writer.endRow();
  }
  const faces = rule.slopes.length > 0;
  return new JudgedCells(
    grid,
    { rows, runs: writer.done(), faces },
    bare,
    new PlaneFields(camera, grid, rows),
  );
}

const NONE = new Int32Array(0);

/** The nearest of some shadows along each row; null where there are none. */
function over(shadows: Shadows, grid: Grid, foot: Vec2, rows: RowSpans, into: OwnerRows): OwnerRows | null {
  if (shadows.count === 0) return null;
  into.begin(shadows, grid, foot, rows);
  return into;
}

function judgeOf(
  camera: Camera,
  found: FoundSight,
  grid: Grid,
  rule: BandRule,
  rows: RowSpans,
  scratch: Scratch,
  night: NightHere | null,
): RowJudge {
  const { footing } = found;
  if (night === null && LevelRows.suits(grid, rule))
    return new LevelRows(camera, grid, rule, sureRows(camera, footing, grid), scratch.writer);
  let glass: Int32Array | null = null;
  if (night !== null && found.glass.count > 0) {
    glass = scratch.owners(grid.columns * grid.rows);
    fillOwners(found.glass, grid, footing.foot, rows, glass, scratch.glass);
  }
  return new AnyRows(camera, grid, rule, night, glass, scratch.writer);
}
