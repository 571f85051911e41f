/** Where the lines of upper ends begin in `lines`. */
export const HIGHS = 16;

/** Rounding of where a line crosses a row, as a share of the numbers that it comes from. */
const ROUNDING = 1e-14;
/** With more rounding than this, in columns, every row is worked out by division. */
const COARSE = 0.1;

/** Where the half-planes of one shadow begin and end in the rows of a grid, in columns from the first. */
export class RowEnds {
  /** Start and step a row of each line: lower ends from 0 on, upper ends from HIGHS on. */
  readonly lines = new Float64Array(2 * HIGHS);
  /** Where lower ends and upper ends stop in `lines`. */
  lows = 0;
  highs = 0;
  /** What the ends may be off by; above ½ where only division will do. */
  slack = 0;
  /** What `divide` found. */
  low = 0;
  high = 0;
  private readonly flats = new Int32Array(HIGHS);
  private flat = 0;
  private readonly p0: number;
  private readonly q0: number;
  private readonly cell: number;
  private readonly numbers: Float64Array;

  /**
   * @param p0, q0  centre of the first cell, relative to the foot of the lens, m
   * @param numbers of the shadows
   */
  constructor(p0: number, q0: number, cell: number, numbers: Float64Array) {
    this.p0 = p0;
    this.q0 = q0;
    this.cell = cell;
    this.numbers = numbers;
  }

  /** Takes up the half-planes of a shadow, for rows up to the given one. */
  setUp(base: number, end: number, lastRow: number): void {
    const { numbers, lines, cell, p0, q0 } = this;
    let lows = 0;
    let highs = HIGHS;
    let flat = 0;
    let size = 1;
    for (let side = base; side < end; side += 3) {
      const a = numbers[side] ?? 0;
      const b = numbers[side + 1] ?? 0;
      const slope = a * cell;
      if (slope === 0) {
        this.flats[flat++] = side;
        continue;
      }
      const start = -(a * p0 + b * q0 + (numbers[side + 2] ?? 0)) / slope;
      const step = -b / a;
      // Terms of `start` can be larger than their sum.
      const terms =
        Math.abs(p0 / cell) + Math.abs((b * q0) / slope) + Math.abs(start) + Math.abs(step) * lastRow;
      if (terms > size) size = terms;
      if (slope > 0) {
        lines[lows] = start;
        lines[lows + 1] = step;
        lows += 2;
      } else {
        lines[highs] = start;
        lines[highs + 1] = step;
        highs += 2;
      }
    }
    this.lows = lows;
    this.highs = highs;
    this.flat = flat;
    const slack = size * ROUNDING;
    this.slack = slack < COARSE ? slack : 1;
  }

  /** Whether a row lies outside a half-plane that is bounded along the rows. */
  outsideFlat(row: number): boolean {
    const { numbers, p0, q0, cell } = this;
    for (let one = 0; one < this.flat; one += 1) {
      const side = this.flats[one] ?? 0;
      const here =
        (numbers[side] ?? 0) * p0 + (numbers[side + 1] ?? 0) * (q0 + row * cell) + (numbers[side + 2] ?? 0);
      if (here < 0) return true;
    }
    return false;
  }

  /** The columns of a row within all half-planes and from `low` to `high`, by division: what holds at the very centres. */
  divide(base: number, end: number, row: number, low: number, high: number): void {
    const { numbers, p0, cell } = this;
    const q = this.q0 + row * cell;
    for (let side = base; side < end; side += 3) {
      const a = numbers[side] ?? 0;
      const slope = a * cell;
      const here = a * p0 + (numbers[side + 1] ?? 0) * q + (numbers[side + 2] ?? 0);
      // a·cell·i + here ≥ 0
      if (slope > 0) {
        const from = Math.ceil(-here / slope);
        if (from > low) low = from;
      } else if (slope < 0) {
        const to = Math.floor(-here / slope);
        if (to < high) high = to;
      }
    }
    this.low = low;
    this.high = high;
  }
}
