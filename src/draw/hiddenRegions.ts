import type { Vec2 } from '../base/vector.ts';
import type { CameraCoverage, SiteCoverage } from '../coverage/coverage.ts';
import type { HIDDEN, INSIDE, OUT_OF_FRAME, TOO_DARK } from '../coverage/state.ts';

// Codes of states; the compiler holds them to those of coverage.
const HIDDEN_CELL: typeof HIDDEN = 2;
const UNFRAMED_CELL: typeof OUT_OF_FRAME = 1;
const INSIDE_CELL: typeof INSIDE = 0;
const DARK_CELL: typeof TOO_DARK = 4;

/** Stands for a solid where nothing is in the way but the light is missing. */
export const DARKNESS = 2 ** 30;

/** Cells enough to place a label by. */
const MOST_CELLS = 40_000;
const MOST_SPOTS = 12;

/** What of a camera's coverage is read here. */
interface Judged {
  readonly cells: Pick<CameraCoverage['cells'], 'state' | 'hider'>;
}

/** The largest connected stretch of ground that one solid hides from every camera that would have it in frame. */
export interface HiddenRegion {
  /** Index into the scene's solids; or DARKNESS. */
  readonly solid: number;
  /** m², from cells. */
  readonly area: number;
  /** Where a label would sit well: deep inside, the deepest first. Plane coordinates. */
  readonly spots: readonly Vec2[];
}

/**
 * For each solid that hides something, its largest hidden region and where a label for it sits best.
 * @param group index of what counts as one thing, by solid: the parts of one structure hide together
 */
export function hiddenRegions(
  { grid }: Pick<SiteCoverage, 'grid'>,
  cameras: readonly Judged[],
  group: (solid: number) => number,
): HiddenRegion[] {
  // A label needs no finer cells than these; every nth cell stands for its neighbours.
  const every = Math.max(1, Math.ceil(Math.sqrt((grid.columns * grid.rows) / MOST_CELLS)));
  const side = grid.cell * every;
  const columns = Math.max(1, Math.floor(grid.columns / every));
  const rows = Math.max(1, Math.floor(grid.rows / every));
  const source = Int32Array.from(
    { length: columns * rows },
    (_, cell) =>
      Math.floor((Math.floor(cell / columns) + 0.5) * every) * grid.columns +
      Math.floor(((cell % columns) + 0.5) * every),
  );
  const hider = hidersOf(source, cameras);
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
    const deep = deepCells(queue.subarray(0, count), columns, rows);
    const spots = deep.map((cell): Vec2 => [
      grid.left + ((cell % columns) + 0.5) * side,
      grid.bottom + (Math.floor(cell / columns) + 0.5) * side,
    ]);
    best.set(key, { solid, area, spots });
  }
  return [...best.values()].sort((one, two) => two.area - one.area);
}

/**
 * By cell, who hides it where no camera sees it in any way, DARKNESS where one would in the light; below 0 elsewhere.
 * @param source for each cell, the cell of the coverage that stands for it
 */
function hidersOf(source: Int32Array, cameras: readonly Judged[]): Int32Array {
  const count = source.length;
  const hider = new Int32Array(count).fill(-1);
  for (const { cells } of cameras) {
    for (let cell = 0; cell < count; cell += 1) {
      const from = source[cell] ?? 0;
      const state = cells.state[from];
      if (state === HIDDEN_CELL) {
        if (hider[cell] === -1) hider[cell] = cells.hider[from] ?? -1;
      } else if (state === DARK_CELL) {
        if ((hider[cell] ?? -1) >= -1) hider[cell] = DARKNESS;
      } else if (state !== UNFRAMED_CELL) hider[cell] = state === INSIDE_CELL ? -2 : -3;
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

/** Cells far from a region's edge, spread over it: the deepest, then others at least half as deep. */
function deepCells(region: Int32Array, columns: number, rows: number): number[] {
  const depth = new Map<number, number>();
  for (const cell of region) depth.set(cell, 0);
  let edge = [...region].filter((cell) => {
    const around = neighbours(cell, columns, rows);
    return around.length < 4 || around.some((next) => !depth.has(next));
  });
  const layers: number[][] = [];
  for (let layer = 1; edge.length > 0; layer += 1) {
    for (const cell of edge) depth.set(cell, layer);
    layers.push(edge);
    const next = new Set<number>();
    for (const cell of edge)
      for (const other of neighbours(cell, columns, rows)) if (depth.get(other) === 0) next.add(other);
    edge = [...next];
  }
  const chosen: number[] = [];
  const apart = Math.max(2, layers.length / 2);
  for (const layer of layers.slice(Math.floor(layers.length / 2)).toReversed()) {
    // The middle of a layer first: along a strip that is its middle.
    const ordered = layer.toSorted((a, b) => a - b);
    for (let i = 0; i < ordered.length; i += 1) {
      const cell = ordered[(Math.floor(ordered.length / 2) + i) % ordered.length] ?? 0;
      const far = chosen.every(
        (other) =>
          Math.hypot(
            (other % columns) - (cell % columns),
            Math.floor(other / columns) - Math.floor(cell / columns),
          ) > apart,
      );
      if (far) chosen.push(cell);
      if (chosen.length >= MOST_SPOTS) return chosen;
    }
  }
  return chosen;
}
