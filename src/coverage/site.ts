import type { Grid } from '../sight/grid.ts';
import { less, NO_AREA, type Area } from './area.ts';
import type { Cells, SiteCoverage } from './coverage.ts';
import { RUN, type RowRuns } from './rowRuns.ts';
import { bestBandOf, countOf, siteRuns } from './siteRuns.ts';
import { areaOf, type Tally } from './tally.ts';
import { relabelled, tallyRuns } from './tallyRuns.ts';

/** No camera. */
const NOBODY = 255;

type SiteAreas = Pick<SiteCoverage, 'byBand' | 'byCount' | 'unseen' | 'open'>;

/**
 * The best band of each cell over several cameras, who gives it and how many cover it. On equal bands the finer density
 * wins, then the earlier camera.
 * @param index   of each camera in the scene, one an entry of `cells`
 * @param counted 1 on open ground that counts
 * @param open    the area of that ground
 */
export function siteOf(
  grid: Grid,
  cells: readonly Cells[],
  index: readonly number[],
  counted: Uint8Array,
  open: Area,
  bands: number,
): Site {
  const runs = siteRuns(grid, cells);
  const within = relabelled({ grid, runs }, (code) => code, counted);
  const bandRuns = relabelled({ grid, runs: within }, bestBandOf, null);
  const byBand = tallyRuns({ grid, runs: bandRuns }, bands + 1);
  const byCount = tallyLevels({ grid, runs: within }, cells.length).map((tally) => areaOf(tally, 1, grid));
  const areas = {
    byBand: Array.from({ length: bands }, (_, at) => areaOf(byBand, at + 1, grid)),
    byCount,
    unseen: less(open, byCount[0] ?? NO_AREA),
    open,
  };
  return new Site(grid, runs, cells, index, areas);
}

/** Cells that at least 1, 2, … cameras cover, as label 1: their edges are where fewer do. */
function tallyLevels({ grid, runs }: { readonly grid: Grid; readonly runs: RowRuns }, most: number): Tally[] {
  let highest = 0;
  for (let at = 2; at < runs.list.length; at += RUN) highest = Math.max(highest, countOf(runs.list[at] ?? 0));
  return Array.from({ length: most }, (_, level) => {
    if (level >= highest) return { cells: new Float64Array(2), edges: new Float64Array(2) };
    return tallyRuns(
      { grid, runs: relabelled({ grid, runs }, (code) => (countOf(code) > level ? 1 : -1), null) },
      2,
    );
  });
}

/** Cameras together; arrays with an entry a cell are made when they are first asked for. */
export class Site implements SiteCoverage {
  readonly grid: Grid;
  readonly byBand: readonly Area[];
  readonly byCount: readonly Area[];
  readonly unseen: Area;
  readonly open: Area;
  readonly #runs: RowRuns;
  readonly #cells: readonly Cells[];
  readonly #index: readonly number[];
  #band: Uint8Array | null = null;
  #count: Uint8Array | null = null;
  #best: Uint8Array | null = null;

  constructor(
    grid: Grid,
    runs: RowRuns,
    cells: readonly Cells[],
    index: readonly number[],
    { byBand, byCount, unseen, open }: SiteAreas,
  ) {
    this.grid = grid;
    this.#runs = runs;
    this.#cells = cells;
    this.#index = index;
    this.byBand = byBand;
    this.byCount = byCount;
    this.unseen = unseen;
    this.open = open;
  }

  /** The same cells with other areas. */
  withAreas(areas: SiteAreas): Site {
    return new Site(this.grid, this.#runs, this.#cells, this.#index, areas);
  }

  get band(): Uint8Array {
    this.#band ??= this.#fill(bestBandOf);
    return this.#band;
  }

  get count(): Uint8Array {
    this.#count ??= this.#fill(countOf);
    return this.#count;
  }

  get best(): Uint8Array {
    this.#best ??= bestOf(this.grid, this.#cells, this.#index);
    return this.#best;
  }

  #fill(of: (code: number) => number): Uint8Array {
    const { columns, rows } = this.grid;
    const { starts, list } = this.#runs;
    const into = new Uint8Array(columns * rows);
    for (let row = 0; row < rows; row += 1)
      for (let at = starts[row] ?? 0; at < (starts[row + 1] ?? 0); at += RUN)
        into.fill(
          of(list[at + 2] ?? 0),
          row * columns + (list[at] ?? 0),
          row * columns + (list[at + 1] ?? 0) + 1,
        );
    return into;
  }
}

function bestOf({ columns, rows }: Grid, all: readonly Cells[], index: readonly number[]): Uint8Array {
  const best = new Uint8Array(columns * rows).fill(NOBODY);
  const band = new Uint8Array(best.length);
  const finest = new Float32Array(best.length);
  all.forEach((cells, at) => {
    const { band: bands, density } = cells;
    for (let cell = 0; cell < best.length; cell += 1) {
      const here = bands[cell] ?? 0;
      const fine = density[cell] ?? 0;
      const now = band[cell] ?? 0;
      if (here === 0 || here < now || (here === now && fine <= (finest[cell] ?? 0))) continue;
      band[cell] = here;
      best[cell] = index[at] ?? NOBODY;
      finest[cell] = fine;
    }
  });
  return best;
}
