import type { Vec2 } from '../base/vector.ts';
import type { Grid } from './grid.ts';
import { DEPTH, STRIDE, type Shadows } from './shadowLayout.ts';
import { SpanLists, type RowSpans } from './spanLists.ts';
import { StretchList } from './stretchList.ts';

/**
 * What is nearest along the rows of a grid, one row at a time, as runs of cells. One object serves many cameras, so that
 * nothing is allocated but for growth.
 */
export class OwnerRows {
  /** Three numbers a run of the last row that was laid: first and last column, and the solid or −1. */
  runs = new Int32Array(0);
  private readonly spans = new SpanLists();
  private readonly stretches = new StretchList();
  private numbers: Float64Array = new Float64Array(0);
  private solid: Int32Array = new Int32Array(0);
  private rows: RowSpans = new Int32Array(0);
  private p0 = 0;
  private q0 = 0;
  private cell = 0;

  /**
   * Takes up the shadows of a camera.
   * @param foot plane coordinates of the foot of the lens
   * @param rows first and last column of each row that is asked for
   * Cost: rows × sides a shadow.
   */
  begin(shadows: Shadows, grid: Grid, foot: Vec2, rows: RowSpans): void {
    this.numbers = shadows.numbers;
    this.solid = shadows.solid;
    this.rows = rows;
    this.cell = grid.cell;
    this.p0 = grid.left + grid.cell / 2 - foot[0];
    this.q0 = grid.bottom + grid.cell / 2 - foot[1];
    if (this.runs.length < grid.columns * 3) this.runs = new Int32Array(grid.columns * 3);
    this.spans.collect(shadows, grid, foot, rows);
  }

  /**
   * Lays out a row of which columns are asked for. Where depths tie, the lower index stays.
   * @returns how many numbers of `runs` it takes; runs follow one another without gaps, neighbours have different solids
   * Cost: the stretches that its spans meet.
   */
  lay(row: number): number {
    const { numbers, solid, rows, p0, cell, spans, stretches } = this;
    const { head, list } = spans;
    const q = this.q0 + row * cell;
    stretches.reset(rows[row * 2] ?? 0, rows[row * 2 + 1] ?? -1);
    for (let span = head[row] ?? -1; span >= 0; span = list[span + 3] ?? -1) {
      const shadow = list[span + 2] ?? 0;
      const depth = shadow * STRIDE + DEPTH;
      const a = numbers[depth] ?? 0;
      const { depths } = stretches;
      depths[0] = (numbers[depth + 2] ?? 0) + a * p0 + (numbers[depth + 1] ?? 0) * q;
      depths[1] = a * cell;
      stretches.put(list[span] ?? 0, list[span + 1] ?? -1, solid[shadow] ?? -1);
    }
    return stretches.read(this.runs);
  }
}
