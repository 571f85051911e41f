import type { CameraCoverage, SiteCoverage } from '../coverage/coverage.ts';
import { HIDDEN, OUT_OF_FRAME, INSIDE } from '../coverage/state.ts';

/** Cells enough to place a label by. */
const MOST_CELLS = 40_000;

/** The largest connected stretch of ground that one solid hides from every camera that would have it in frame. */
export interface HiddenRegion {
  /** Index into the scene's solids. */
  readonly solid: number;
  /** m², from cells. */
  readonly area: number;
  /** The cell that lies deepest in it, as plane coordinates. */
  readonly a: number;
  readonly b: number;
}

/**
 * For each solid that hides something, its largest hidden region and where a label for it sits best.
 * @param group index of what counts as one thing, by solid: the parts of one structure hide together
 */
export function hiddenRegions(
  site: SiteCoverage,
  cameras: readonly CameraCoverage[],
  group: (solid: number) => number,
): HiddenRegion[] {
  const { grid } = site;
  // A label needs no finer cells than these; every nth cell stands for its neighbours.
  const every = Math.max(1, Math.ceil(Math.sqrt((grid.columns * grid.rows) / MOST_CELLS)));
  const side = grid.cell * every;
  const columns = Math.max(1, Math.floor(grid.columns / every));
  const rows = Math.max(1, Math.floor(grid.rows / every));
  const source = (cell: number): number =>
    Math.floor((Math.floor(cell / columns) + 0.5) * every) * grid.columns + Math.floor(((cell % columns) + 0.5) * every);
  const hider = hidersOf(columns * rows, source, cameras);
  const seen = new Uint8Array(columns * rows);
  const best = new Map<number, HiddenRegion>();
  const queue = new Int32Array(columns * rows);
  for (let start = 0; start < hider.length; start += 1) {
    const solid = hider[start] ?? -1;
    if (solid < 0 || seen[start] === 1) continue;
    const key = group(solid);
    const count = flood(start, columns, rows, queue, seen, (cell) => {
      const other = hider[cell] ?? -1;
      return other >= 0 && group(other) === key;
    });
    const area = count * side * side;
    if (area <= (best.get(key)?.area ?? 0)) continue;
    const cell = deepest(queue.subarray(0, count), columns, rows);
    best.set(key, {
      solid,
      area,
      a: grid.left + ((cell % columns) + 0.5) * side,
      b: grid.bottom + (Math.floor(cell / columns) + 0.5) * side,
    });
  }
  return [...best.values()].sort((one, two) => two.area - one.area);
}

/** By cell, who hides it where no camera sees it in any way; −1 elsewhere. */
function hidersOf(
  count: number,
  source: (cell: number) => number,
  cameras: readonly CameraCoverage[],
): Int32Array {
  const hider = new Int32Array(count).fill(-1);
  for (const { cells } of cameras) {
    for (let cell = 0; cell < count; cell += 1) {
      const from = source(cell);
      const state = cells.state[from];
      if (state === HIDDEN) {
        if (hider[cell] === -1) hider[cell] = cells.hider[from] ?? -1;
      } else if (state !== OUT_OF_FRAME) hider[cell] = state === INSIDE ? -2 : -3;
    }
  }
  return hider;
}

function flood(
  start: number,
  columns: number,
  rows: number,
  queue: Int32Array,
  seen: Uint8Array,
  belongs: (cell: number) => boolean,
): number {
  let [head, tail] = [0, 1];
  queue[0] = start;
  seen[start] = 1;
  while (head < tail) {
    const cell = queue[head] ?? 0;
    head += 1;
    for (const next of neighbours(cell, columns, rows)) {
      if (seen[next] === 1 || !belongs(next)) continue;
      seen[next] = 1;
      queue[tail] = next;
      tail += 1;
    }
  }
  return tail;
}

function neighbours(cell: number, columns: number, rows: number): number[] {
  const column = cell % columns;
  const row = (cell - column) / columns;
  const out: number[] = [];
  if (column > 0) out.push(cell - 1);
  if (column + 1 < columns) out.push(cell + 1);
  if (row > 0) out.push(cell - columns);
  if (row + 1 < rows) out.push(cell + columns);
  return out;
}

/** The cell of a region farthest from its edge, by peeling layers off. */
function deepest(region: Int32Array, columns: number, rows: number): number {
  const layer = new Map<number, number>();
  for (const cell of region) layer.set(cell, 0);
  let edge = [...region].filter((cell) => {
    const around = neighbours(cell, columns, rows);
    return around.length < 4 || around.some((next) => !layer.has(next));
  });
  let last = edge[0] ?? region[0] ?? 0;
  for (let depth = 1; edge.length > 0; depth += 1) {
    for (const cell of edge) layer.set(cell, depth);
    last = edge[Math.floor(edge.length / 2)] ?? last;
    const next = new Set<number>();
    for (const cell of edge) for (const other of neighbours(cell, columns, rows)) if (layer.get(other) === 0) next.add(other);
    edge = [...next];
  }
  return last;
}
