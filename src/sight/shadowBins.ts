import { BOX, STRIDE, type Shadows } from './shadows.ts';

/** Bins along each side. */
const SIDE = 32;
/** A shadow over more bins than this is looked at for every line. */
const WIDE = (SIDE * SIDE) / 8;

/** Shadows by where they lie, largest first, so that a line meets few of them and empties early. */
export class ShadowBins {
  private readonly wide: Int32Array;
  private readonly starts: Int32Array;
  private readonly members: Int32Array;
  private readonly stamps: Int32Array;
  private stamp = 0;
  private readonly left: number;
  private readonly bottom: number;
  private readonly across: number;
  private readonly up: number;

  /** @param half half the side of the square around the foot that lines lie in, m */
  constructor(shadows: Shadows, half: number) {
    const { count, numbers } = shadows;
    this.left = -half;
    this.bottom = -half;
    this.across = (2 * half) / SIDE;
    this.up = (2 * half) / SIDE;
    this.stamps = new Int32Array(count);
    const order = bySize(shadows, half);
    const wide: number[] = [];
    const sizes = new Int32Array(SIDE * SIDE + 1);
    const narrow: number[] = [];
    for (const shadow of order) {
      const box = shadow * STRIDE + BOX;
      const [i0, j0] = [this.column(numbers[box] ?? 0), this.row(numbers[box + 1] ?? 0)];
      const [i1, j1] = [this.column(numbers[box + 2] ?? 0), this.row(numbers[box + 3] ?? 0)];
      if ((i1 - i0 + 1) * (j1 - j0 + 1) > WIDE) {
        wide.push(shadow);
        continue;
      }
      narrow.push(shadow);
      for (let j = j0; j <= j1; j += 1)
        for (let i = i0; i <= i1; i += 1) sizes[j * SIDE + i + 1] = (sizes[j * SIDE + i + 1] ?? 0) + 1;
    }
    for (let bin = 0; bin < SIDE * SIDE; bin += 1) sizes[bin + 1] = (sizes[bin + 1] ?? 0) + (sizes[bin] ?? 0);
    this.wide = Int32Array.from(wide);
    this.starts = sizes;
    this.members = new Int32Array(sizes[SIDE * SIDE] ?? 0);
    const next = sizes.slice();
    for (const shadow of narrow) {
      const box = shadow * STRIDE + BOX;
      const [i0, j0] = [this.column(numbers[box] ?? 0), this.row(numbers[box + 1] ?? 0)];
      const [i1, j1] = [this.column(numbers[box + 2] ?? 0), this.row(numbers[box + 3] ?? 0)];
      for (let j = j0; j <= j1; j += 1)
        for (let i = i0; i <= i1; i += 1) {
          const at = next[j * SIDE + i] ?? 0;
          this.members[at] = shadow;
          next[j * SIDE + i] = at + 1;
        }
    }
  }

  /**
   * Visits each shadow whose bin a straight stretch passes, once, until `visit` answers true.
   * @param p0, q0, p1, q1 its ends
   */
  along(p0: number, q0: number, p1: number, q1: number, visit: (shadow: number) => boolean): void {
    for (const shadow of this.wide) if (visit(shadow)) return;
    this.stamp += 1;
    const [i0, i1] = [this.column(Math.min(p0, p1)), this.column(Math.max(p0, p1))];
    const slope = p1 === p0 ? 0 : (q1 - q0) / (p1 - p0);
    for (let i = i0; i <= i1; i += 1) {
      // The stretch within this column of bins, a hair wider so that no bin on an edge is missed.
      const from = Math.max(Math.min(p0, p1), this.left + i * this.across - 1e-9);
      const to = Math.min(Math.max(p0, p1), this.left + (i + 1) * this.across + 1e-9);
      const steep = p1 === p0 || i0 === i1;
      const qa = steep ? q0 : q0 + slope * (from - p0);
      const qb = steep ? q1 : q0 + slope * (to - p0);
      const [j0, j1] = [this.row(Math.min(qa, qb) - 1e-6), this.row(Math.max(qa, qb) + 1e-6)];
      for (let j = j0; j <= j1; j += 1) {
        const bin = j * SIDE + i;
        for (let at = this.starts[bin] ?? 0; at < (this.starts[bin + 1] ?? 0); at += 1) {
          const shadow = this.members[at] ?? 0;
          if (this.stamps[shadow] === this.stamp) continue;
          this.stamps[shadow] = this.stamp;
          if (visit(shadow)) return;
        }
      }
    }
  }

  private column(p: number): number {
    return Math.min(SIDE - 1, Math.max(0, Math.floor((p - this.left) / this.across)));
  }

  private row(q: number): number {
    return Math.min(SIDE - 1, Math.max(0, Math.floor((q - this.bottom) / this.up)));
  }
}

/** Indices of shadows, the largest box within the square first. */
function bySize({ count, numbers }: Shadows, half: number): Int32Array {
  const kept = (n: number) => Math.min(half, Math.max(-half, n));
  const sizes = new Float64Array(count);
  for (let shadow = 0; shadow < count; shadow += 1) {
    const box = shadow * STRIDE + BOX;
    sizes[shadow] =
      (kept(numbers[box + 2] ?? 0) - kept(numbers[box] ?? 0)) *
      (kept(numbers[box + 3] ?? 0) - kept(numbers[box + 1] ?? 0));
  }
  return Int32Array.from(sizes.keys()).sort((one, two) => (sizes[two] ?? 0) - (sizes[one] ?? 0));
}
