import type { Grid } from '../sight/grid.ts';
import { bandIn } from './cellCode.ts';
import type { Cells } from './coverage.ts';
import { RUN, RunWriter, type RowRuns } from './rowRuns.ts';
import { relabelled } from './tallyRuns.ts';

/** Several cameras' bands along the rows, in one number: the best, and how many cameras cover. */
const mergedCode = (count: number, band: number): number => (count << 8) | band;
export const countOf = (code: number): number => code >> 8;
export const bestBandOf = (code: number): number => code & 255;

/** What several cameras cover along the rows of a grid; nothing where none does. */
export function siteRuns(grid: Grid, cells: readonly Cells[]): RowRuns {
  const writer = new RunWriter();
  let merged: RowRuns = { starts: new Int32Array(grid.rows + 1), list: new Int32Array(0) };
  for (const { runs } of cells) {
    const covered = relabelled({ grid, runs }, (code) => bandIn(code) || -1, null);
    writer.begin(grid.rows);
    for (let row = 0; row < grid.rows; row += 1) {
      mergeRow(merged, covered, row, writer);
      writer.endRow();
    }
    merged = writer.done();
  }
  return merged;
}

/** Lays a camera's covered runs over a row of what others cover. */
function mergeRow(site: RowRuns, own: RowRuns, row: number, out: RunWriter): void {
  let one = site.starts[row] ?? 0;
  let two = own.starts[row] ?? 0;
  const [oneEnd, twoEnd] = [site.starts[row + 1] ?? 0, own.starts[row + 1] ?? 0];
  let at = 0;
  while (one < oneEnd || two < twoEnd) {
    const from1 = one < oneEnd ? (site.list[one] ?? 0) : Infinity;
    const from2 = two < twoEnd ? (own.list[two] ?? 0) : Infinity;
    const to1 = one < oneEnd ? (site.list[one + 1] ?? 0) : Infinity;
    const to2 = two < twoEnd ? (own.list[two + 1] ?? 0) : Infinity;
    at = Math.max(at, Math.min(from1, from2));
    const [in1, in2] = [from1 <= at, from2 <= at];
    const to = Math.min(in1 ? to1 : from1 - 1, in2 ? to2 : from2 - 1);
    const code = in1 ? (site.list[one + 2] ?? 0) : 0;
    const band = in2 ? (own.list[two + 2] ?? 0) : 0;
    out.put(at, to, mergedCode(countOf(code) + (in2 ? 1 : 0), Math.max(bestBandOf(code), band)));
    at = to + 1;
    if (at > to1) one += RUN;
    if (at > to2) two += RUN;
  }
}
