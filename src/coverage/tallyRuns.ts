import type { Grid } from '../sight/grid.ts';
import { RUN, RunWriter, type RowRuns } from './rowRuns.ts';
import type { Tally } from './tally.ts';

/** A grid and what is along its rows. */
export interface GridRuns {
  readonly grid: Grid;
  readonly runs: RowRuns;
}

/**
 * Runs under other codes.
 * @param labelOf the new code of a code; below 0 where its cells are left out
 * @param mask    1 where cells count; null where all do
 */
export function relabelled(
  { grid, runs }: GridRuns,
  labelOf: (code: number) => number,
  mask: Uint8Array | null,
): RowRuns {
  const { starts, list } = runs;
  const writer = new RunWriter(list.length / RUN);
  writer.begin(grid.rows);
  for (let row = 0; row < grid.rows; row += 1) {
    const base = row * grid.columns;
    for (let at = starts[row] ?? 0; at < (starts[row + 1] ?? 0); at += RUN) {
      const label = labelOf(list[at + 2] ?? 0);
      if (label < 0) continue;
      const [from, to] = [list[at] ?? 0, list[at + 1] ?? -1];
      if (mask === null) writer.put(from, to, label);
      else putMasked(writer, mask, base, from, to, label);
    }
    writer.endRow();
  }
  return writer.done();
}

function putMasked(
  writer: RunWriter,
  mask: Uint8Array,
  base: number,
  from: number,
  to: number,
  label: number,
): void {
  const end = base + to + 1;
  for (let at = base + from; at < end;) {
    while (at < end && mask[at] !== 1) at += 1;
    const first = at;
    while (at < end && mask[at] === 1) at += 1;
    if (at > first) writer.put(first - base, at - 1 - base, label);
  }
}

/**
 * Counts cells by label, and of these the edge cells, which have a 4-neighbour of another label or of none; the grid's own
 * edge makes none. Cost: runs, whatever their length.
 * @param most labels lie below
 */
export function tallyRuns({ grid, runs }: GridRuns, most: number): Tally {
  const [cells, edges] = [new Float64Array(most), new Float64Array(most)];
  const { starts, list } = runs;
  const last = grid.columns - 1;
  for (let row = 0; row < grid.rows; row += 1) {
    const end = starts[row + 1] ?? 0;
    const isTop = row + 1 === grid.rows;
    let below = row === 0 ? -1 : (starts[row - 1] ?? 0);
    const belowEnd = starts[row] ?? 0;
    let above = isTop ? -1 : end;
    const aboveEnd = isTop ? -1 : (starts[row + 2] ?? 0);
    for (let at = starts[row] ?? 0; at < end; at += RUN) {
      const from = list[at] ?? 0;
      const to = list[at + 1] ?? -1;
      const label = list[at + 2] ?? 0;
      // Beside the ends of a run lies something else, but at the grid's edge nothing.
      const first = from > 0 ? from + 1 : from;
      const until = to < last ? to - 1 : to;
      if (below >= 0) while (below < belowEnd && (list[below + 1] ?? 0) < first) below += RUN;
      if (above >= 0) while (above < aboveEnd && (list[above + 1] ?? 0) < first) above += RUN;
      const inner = first > until ? 0 : innerOf(list, first, until, label, below, belowEnd, above, aboveEnd);
      cells[label] = (cells[label] ?? 0) + to - from + 1;
      edges[label] = (edges[label] ?? 0) + to - from + 1 - inner;
    }
  }
  return { cells, edges };
}

/** How many of the columns have the same label in the rows below and above; −1 for a row where there is none. */
function innerOf(
  list: Int32Array,
  first: number,
  until: number,
  label: number,
  below: number,
  belowEnd: number,
  above: number,
  aboveEnd: number,
): number {
  if (below < 0) return above < 0 ? until - first + 1 : overlap(list, first, until, label, above, aboveEnd);
  if (above < 0) return overlap(list, first, until, label, below, belowEnd);
  let inner = 0;
  let beyond = above;
  for (let at = below; at < belowEnd && (list[at] ?? 0) <= until; at += RUN) {
    if (list[at + 2] !== label) continue;
    const from = Math.max(first, list[at] ?? 0);
    const to = Math.min(until, list[at + 1] ?? 0);
    while (beyond < aboveEnd && (list[beyond + 1] ?? 0) < from) beyond += RUN;
    inner += overlap(list, from, to, label, beyond, aboveEnd);
  }
  return inner;
}

function overlap(
  list: Int32Array,
  first: number,
  until: number,
  label: number,
  start: number,
  end: number,
): number {
  let sum = 0;
  for (let at = start; at < end && (list[at] ?? 0) <= until; at += RUN) {
    if (list[at + 2] !== label) continue;
    sum += Math.max(0, Math.min(until, list[at + 1] ?? 0) - Math.max(first, list[at] ?? 0) + 1);
  }
  return sum;
}
