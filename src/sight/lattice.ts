/** Coordinates are whole numbers of a unit below 2 to this power, so that the sides below are told exactly. */
const BITS = 38;
const HALF = 2 ** 20;
/** Where two products differ by less than this share of them, the difference is taken exactly. */
const NEAR = 1e-9;

/** The rectangle that points lie in, m. */
export interface Extent {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/**
 * Points on a lattice so fine (a 250,000,000,000th of the site) that moving onto it costs no area worth a name, and so
 * coarse that it is told exactly on which side of a line a point lies. Three points in one line count as if each had been
 * moved by a hair, the lower the index the farther, so that there are no ties: H. Edelsbrunner and E. P. Mücke, Simulation
 * of simplicity, ACM Transactions on Graphics 9(1), 1990, from memory.
 */
export class Lattice {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** m. */
  readonly unit: number;
  readonly middle: readonly [number, number];
  /** Twice the area of the last triangle asked about, square units, to nine digits or better; 0 only where it is none. */
  twice = 0;

  constructor(count: number, { left, bottom, right, top }: Extent) {
    this.x = new Float64Array(count);
    this.y = new Float64Array(count);
    const half = Math.max(right - left, top - bottom, 1e-3) / 2;
    this.unit = 2 ** (Math.ceil(Math.log2(half)) - BITS + 1);
    this.middle = [(left + right) / 2, (bottom + top) / 2];
  }

  put(point: number, a: number, b: number): void {
    this.x[point] = Math.round((a - this.middle[0]) / this.unit);
    this.y[point] = Math.round((b - this.middle[1]) / this.unit);
  }

  /** Whether point k lies to the left of the way from point i to point j; three different points. */
  isLeft(i: number, j: number, k: number): boolean {
    const { x, y } = this;
    const xi = x[i] ?? 0;
    const yi = y[i] ?? 0;
    const ax = (x[j] ?? 0) - xi;
    const ay = (y[j] ?? 0) - yi;
    const bx = (x[k] ?? 0) - xi;
    const by = (y[k] ?? 0) - yi;
    const one = ax * by;
    const two = ay * bx;
    const twice = one - two;
    this.twice = twice;
    // Differences are exact, products rounded: near the line their difference would be little but rounding.
    if (Math.abs(twice) > NEAR * (Math.abs(one) + Math.abs(two))) return twice > 0;
    this.twice = differenceOf(ax, by, ay, bx);
    return this.twice === 0 ? this.isLeftOfHair(i, j, k) : this.twice > 0;
  }

  /** The side of a point in line with two others: of the derivatives by what each is moved, the first that is not zero. */
  private isLeftOfHair(i: number, j: number, k: number): boolean {
    let [a, b, c] = [i, j, k];
    let even = true;
    if (a > b) {
      [a, b] = [b, a];
      even = !even;
    }
    if (b > c) {
      [b, c] = [c, b];
      even = !even;
    }
    if (a > b) {
      [a, b] = [b, a];
      even = !even;
    }
    const { x, y } = this;
    const byYa = (x[c] ?? 0) - (x[b] ?? 0);
    if (byYa !== 0) return byYa > 0 === even;
    const byXa = (y[b] ?? 0) - (y[c] ?? 0);
    if (byXa !== 0) return byXa > 0 === even;
    const byYb = (x[a] ?? 0) - (x[c] ?? 0);
    if (byYb !== 0) return byYb > 0 === even;
    return even;
  }
}

/** a·b − c·d for whole numbers below 2^40, rounded only where it is large: each product in three parts of twenty bits. */
function differenceOf(a: number, b: number, c: number, d: number): number {
  const a1 = Math.floor(a / HALF);
  const b1 = Math.floor(b / HALF);
  const c1 = Math.floor(c / HALF);
  const d1 = Math.floor(d / HALF);
  const a0 = a - a1 * HALF;
  const b0 = b - b1 * HALF;
  const c0 = c - c1 * HALF;
  const d0 = d - d1 * HALF;
  const high = a1 * b1 - c1 * d1;
  const middle = a1 * b0 + a0 * b1 - c1 * d0 - c0 * d1;
  return (high * HALF + middle) * HALF + (a0 * b0 - c0 * d0);
}
