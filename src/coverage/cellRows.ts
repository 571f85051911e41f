import { codeOf } from './cellCode.ts';
import type { RowJudge } from './rowJudge.ts';
import { RUN, type RowRuns } from './rowRuns.ts';
import { KEPT } from './rule.ts';
import { HIDDEN, INSIDE, SCREENED } from './state.ts';

const IN_SOLID = codeOf(INSIDE, KEPT, 0);
/** Nothing in the way. */
const OPEN = -1;

/**
 * Puts the cells of a row together from what lies over them, the left first: inside a solid goes before hidden, that before
 * screened; a screen that has closed up hides, behind any solid.
 */
export class CellRows {
  private readonly inside: RowRuns;
  private readonly judge: RowJudge;
  private row = 0;
  /** The first run of `inside` that does not end before what comes next, and where those of the row end. */
  private solid = 0;
  private solids = 0;
  /** Runs of the nearest screens of the row, how many numbers they take, and the first that matters to what comes next. */
  private screenRuns: Int32Array = new Int32Array(0);
  private screenCount = 0;
  private screen = 0;
  private closed: Int32Array | null = null;
  private base = 0;

  constructor(inside: RowRuns, judge: RowJudge) {
    this.inside = inside;
    this.judge = judge;
  }

  begin(row: number): void {
    this.row = row;
    this.solid = this.inside.starts[row] ?? 0;
    this.solids = this.inside.starts[row + 1] ?? 0;
    this.screenCount = 0;
    this.closed = null;
  }

  /** @param closed the nearest closed screen over each cell of the grid, of which the row begins at `base`; −1 none */
  screens(runs: Int32Array, count: number, closed: Int32Array | null, base: number): void {
    this.screenRuns = runs;
    this.screenCount = count;
    this.screen = 0;
    this.closed = closed;
    this.base = base;
  }

  hidden(from: number, to: number, solid: number): void {
    this.put(from, to, codeOf(HIDDEN, KEPT, solid));
  }

  /** Cells that no solid hides. */
  beyond(from: number, to: number): void {
    const { closed, base } = this;
    if (closed === null) {
      this.behindScreens(from, to);
      return;
    }
    for (let at = from; at <= to;) {
      const owner = closed[base + at] ?? -1;
      let end = at;
      while (end < to && closed[base + end + 1] === owner) end += 1;
      if (owner >= 0) this.hidden(at, end, owner);
      else this.behindScreens(at, end);
      at = end + 1;
    }
  }

  private behindScreens(from: number, to: number): void {
    const { screenRuns, screenCount } = this;
    if (screenCount === 0) {
      this.put(from, to, OPEN);
      return;
    }
    while ((screenRuns[this.screen + 1] ?? Infinity) < from) this.screen += 3;
    for (let at = this.screen; at < screenCount; at += 3) {
      const first = Math.max(from, screenRuns[at] ?? 0);
      const last = Math.min(to, screenRuns[at + 1] ?? -1);
      if (first > to) return;
      const owner = screenRuns[at + 2] ?? -1;
      this.put(first, last, owner < 0 ? OPEN : codeOf(SCREENED, KEPT, owner));
    }
  }

  /** Gives cells to the judge, those inside solids as such. */
  private put(from: number, to: number, code: number): void {
    const { list } = this.inside;
    while (this.solid < this.solids && (list[this.solid + 1] ?? 0) < from) this.solid += RUN;
    let at = from;
    for (let solid = this.solid; solid < this.solids && (list[solid] ?? 0) <= to; solid += RUN) {
      const first = Math.max(from, list[solid] ?? 0);
      const last = Math.min(to, list[solid + 1] ?? 0);
      if (at < first) this.give(at, first - 1, code);
      this.judge.place(this.row, first, last, IN_SOLID);
      at = last + 1;
    }
    if (at <= to) this.give(at, to, code);
  }

  private give(from: number, to: number, code: number): void {
    if (code === OPEN) this.judge.open(this.row, from, to);
    else this.judge.place(this.row, from, to, code);
  }
}
