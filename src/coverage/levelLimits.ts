import type { Grid } from '../sight/grid.ts';
import type { BandRule } from './rule.ts';

/**
 * Which columns of a row of a level plane lie within a camera's range, and which are looked down on more steeply than a limit
 * of faces: intervals around the foot of the lens, whose ends are told by the rule's own comparison at the cells beside them.
 */
export class LevelLimits {
  private readonly grid: Grid;
  private readonly rule: BandRule;
  private readonly start: number;
  private readonly dz: number;
  /** First and last column within range, then of each limit those that are too steep; first > last where none. */
  private readonly ends: Int32Array;
  private dy = 0;

  /** @param ex, dz place of the lens along x, and the plane's height above it, m */
  constructor(grid: Grid, rule: BandRule, ex: number, dz: number) {
    this.grid = grid;
    this.rule = rule;
    this.start = grid.plane.origin[0] + grid.left + grid.cell / 2 - ex;
    this.dz = dz;
    this.ends = new Int32Array(2 + rule.slopes.length * 2);
  }

  /** @param dy from the lens to the row, m */
  toRow(dy: number): void {
    const { rule, dz, ends } = this;
    this.dy = dy;
    this.interval(0, rule.range2 - dz * dz - dy * dy);
    for (let limit = 0; limit < rule.slopes.length; limit += 1) {
      const slope = rule.slopes[limit] ?? 1;
      const over = slope > 0 ? -dz / slope : Infinity;
      if (dz < 0) this.interval(limit + 1, over * over - dy * dy);
      else {
        ends[limit * 2 + 2] = 1;
        ends[limit * 2 + 3] = 0;
      }
    }
  }

  reached(column: number): boolean {
    return this.holds(0, column);
  }

  isSteep(limit: number, column: number): boolean {
    return this.holds(limit + 1, column);
  }

  /** The last column from a given one on to which the same limits apply. */
  until(column: number): number {
    const { ends } = this;
    let last = this.grid.columns - 1;
    for (let at = 0; at < ends.length; at += 2) {
      const [from, to] = [ends[at] ?? 1, ends[at + 1] ?? 0];
      if (from > to) continue;
      if (column < from) last = Math.min(last, from - 1);
      else if (column <= to) last = Math.min(last, to);
    }
    return last;
  }

  private holds(at: number, column: number): boolean {
    return column >= (this.ends[at * 2] ?? 1) && column <= (this.ends[at * 2 + 1] ?? 0);
  }

  /** @param east2 square of the reach along the row, m²; below 0 where it misses the row by more than rounding */
  private interval(at: number, east2: number): void {
    const { grid, start, ends } = this;
    const most = grid.columns - 1;
    const half = Math.sqrt(Math.max(0, east2));
    let from = clamped(Math.ceil((-half - start) / grid.cell), 0, most + 1);
    let to = clamped(Math.floor((half - start) / grid.cell), -1, most);
    // By rounding an end may be off by a cell.
    while (from > 0 && this.within(at, from - 1)) from -= 1;
    while (from <= to && !this.within(at, from)) from += 1;
    while (to < most && this.within(at, to + 1)) to += 1;
    while (to >= from && !this.within(at, to)) to -= 1;
    ends[at * 2] = from;
    ends[at * 2 + 1] = to;
  }

  /** The rule's own comparison at the centre of a cell. */
  private within(at: number, column: number): boolean {
    const { rule, dy, dz } = this;
    const east = this.start + column * this.grid.cell;
    const over2 = east * east + dy * dy;
    if (at === 0) return over2 + dz * dz <= rule.range2;
    return -dz > Math.sqrt(over2) * (rule.slopes[at - 1] ?? 0);
  }
}

const clamped = (n: number, least: number, most: number): number => (n < least ? least : n > most ? most : n);
