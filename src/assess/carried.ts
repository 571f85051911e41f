import { less, plus } from '../coverage/area.ts';
import { codeAmong } from '../coverage/cellCode.ts';
import type { CameraAreas, CameraCoverage, Cells } from '../coverage/coverage.ts';
import { RUN, type RowRuns } from '../coverage/rowRuns.ts';
import type { Region, Sight } from '../sight/sight.ts';
import type { Ground } from './ground.ts';

/** What has changed around a camera that nothing of it touches. */
export interface Around {
  readonly ground: Ground;
  /** The index now of each solid of the former list; null where they kept theirs. */
  readonly indices: Int32Array | null;
  readonly solids: number;
}

/**
 * A coverage as it is among other solids, none of which it can tell: what lies inside solids out of its frame is taken anew,
 * and solids go by their new indices. Arrays that stay the same are shared with the former one, none is written to.
 */
export function carried(coverage: CameraCoverage, { ground, indices, solids }: Around): CameraCoverage {
  const index = (solid: number): number => (indices === null || solid < 0 ? solid : (indices[solid] ?? -1));
  const { axisMeets } = coverage.frustum;
  return {
    ...coverage,
    sight: carriedSight(coverage.sight, index, indices !== null, solids),
    cells: carriedCells(coverage.cells, ground, indices === null ? null : index),
    areas: carriedAreas(coverage.areas, ground, index),
    frustum: { ...coverage.frustum, axisMeets: axisMeets === null ? null : index(axisMeets) },
  };
}

function carriedSight(
  sight: Sight,
  index: (solid: number) => number,
  renumbered: boolean,
  solids: number,
): Sight {
  if (!renumbered) return sight.solids === solids ? sight : { ...sight, solids };
  const region = (one: Region): Region => ({
    ...one,
    pieces: one.pieces.map((piece) => ({ ...piece, beyond: index(piece.beyond) })),
  });
  const seen = region(sight.seen);
  return {
    ...sight,
    solids,
    lensInside: sight.lensInside === null ? null : index(sight.lensInside),
    seen,
    beyondScreens: sight.beyondScreens === sight.seen ? seen : region(sight.beyondScreens),
  };
}

/** Runs tell only of the frame: what came to lie inside solids is out of it. */
function carriedCells(
  cells: Cells,
  { grid, bare }: Ground,
  index: ((solid: number) => number) | null,
): Cells {
  return cells.among(grid, bare, index === null ? cells.runs : renumbered(cells.runs, index));
}

function renumbered({ starts, list }: RowRuns, index: (solid: number) => number): RowRuns {
  const moved = list.slice();
  for (let at = 2; at < moved.length; at += RUN) moved[at] = codeAmong(moved[at] ?? 0, index);
  return { starts, list: moved };
}

function carriedAreas(areas: CameraAreas, { within }: Ground, index: (solid: number) => number): CameraAreas {
  const { byState, byHider } = areas;
  const { hidden, screened, covered } = byState;
  const framed = [
    hidden,
    screened,
    byState['too dark'],
    covered,
    byState['too coarse'],
    within.inside,
  ].reduce(plus);
  return {
    ...areas,
    byState: { ...byState, inside: within.inside, 'out of frame': less(within.total, framed) },
    byHider: byHider.map(({ solid, area }) => ({ solid: index(solid), area })),
  };
}
