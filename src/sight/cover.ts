import { DEPTH, STRIDE, type Shadows } from './shadows.ts';
import { SAME_LINE, type Line } from './spans.ts';

/** Two depths nearer than this share of themselves tie. */
const SAME_DEPTH = 1e-9;

/** The part of a line beside which a shadow lies: on its left, its right, or both where the line runs through it. */
export interface Cover {
  readonly shadow: number;
  readonly from: number;
  readonly to: number;
  readonly left: boolean;
  readonly right: boolean;
}

/**
 * Where a shadow lies beside a line.
 * @returns null where it does not
 */
export function coverOf(
  { numbers, sides }: Shadows,
  shadow: number,
  line: Line,
  range: readonly [number, number],
  radius: number,
): Cover | null {
  const base = shadow * STRIDE;
  const end = base + (sides[shadow] ?? 0) * 3;
  let [from, to] = range;
  let [left, right] = [true, true];
  for (let side = base; side < end; side += 3) {
    const [a, b] = [numbers[side] ?? 0, numbers[side + 1] ?? 0];
    const along = a * line.a + b * line.b;
    const slope = a * line.b - b * line.a;
    const here = (numbers[side + 2] ?? 0) - line.k * along;
    if (Math.abs(slope) * radius < SAME_LINE) {
      if (here < -SAME_LINE) return null;
      if (here < SAME_LINE) {
        if (along > 0) right = false;
        else left = false;
      }
    } else if (slope > 0) from = Math.max(from, -here / slope);
    else to = Math.min(to, -here / slope);
    if (from >= to) return null;
  }
  return left || right ? { shadow, from, to, left, right } : null;
}

/** The first side of a shadow that lies on a line; −1 where none does. */
export function sideOn({ numbers, sides }: Shadows, shadow: number, line: Line, radius: number): number {
  const base = shadow * STRIDE;
  for (let side = 0; side < (sides[shadow] ?? 0); side += 1) {
    const at = base + side * 3;
    const [a, b] = [numbers[at] ?? 0, numbers[at + 1] ?? 0];
    const slope = a * line.b - b * line.a;
    const here = (numbers[at + 2] ?? 0) - line.k * (a * line.a + b * line.b);
    if (Math.abs(slope) * radius < SAME_LINE && Math.abs(here) < SAME_LINE) return side;
  }
  return -1;
}

/** What hides first just beside a line, over shadows in ranks: a higher rank goes before any depth. */
export class Nearest {
  private readonly shadows: Shadows;
  private readonly rank: Uint8Array;

  constructor(shadows: Shadows, rank: Uint8Array) {
    this.shadows = shadows;
    this.rank = rank;
  }

  /** The shadow in front at parameter t, on the left or right of a line; −1 where nothing hides. */
  at(covers: readonly Cover[], line: Line, t: number, left: boolean): number {
    let best = -1;
    for (const cover of covers) {
      if (!(left ? cover.left : cover.right) || t <= cover.from || t >= cover.to) continue;
      if (best < 0 || this.before(cover.shadow, best, line, t, left)) best = cover.shadow;
    }
    return best;
  }

  /** Whether one shadow is in front of another just beside a line: by rank, depth, how depth changes off the line, index. */
  private before(one: number, two: number, line: Line, t: number, left: boolean): boolean {
    const [r1, r2] = [this.rank[one] ?? 0, this.rank[two] ?? 0];
    if (r1 !== r2) return r1 > r2;
    const [s1, s2] = [this.depth(one, line, t), this.depth(two, line, t)];
    if (Math.abs(s1 - s2) > SAME_DEPTH * Math.max(s1, s2)) return s1 > s2;
    const [g1, g2] = [this.slope(one, line), this.slope(two, line)];
    if (Math.abs(g1 - g2) > SAME_DEPTH * Math.max(1, Math.abs(g1), Math.abs(g2)))
      return left ? g1 > g2 : g1 < g2;
    return (this.shadows.solid[one] ?? 0) < (this.shadows.solid[two] ?? 0);
  }

  /** Depth 1/share of a shadow's face at a place of a line. */
  private depth(shadow: number, line: Line, t: number): number {
    const at = shadow * STRIDE + DEPTH;
    const { numbers } = this.shadows;
    const [p, q] = [-line.k * line.a + t * line.b, -line.k * line.b - t * line.a];
    return (numbers[at] ?? 0) * p + (numbers[at + 1] ?? 0) * q + (numbers[at + 2] ?? 0);
  }

  /** How fast that depth grows towards the left of the line. */
  private slope(shadow: number, line: Line): number {
    const at = shadow * STRIDE + DEPTH;
    return (this.shadows.numbers[at] ?? 0) * line.a + (this.shadows.numbers[at + 1] ?? 0) * line.b;
  }

  /** Where the depths of two shadows cross along a line; NaN where they do not. */
  crossing(one: number, two: number, line: Line): number {
    const d0 = this.depth(one, line, 0) - this.depth(two, line, 0);
    const d1 = this.depth(one, line, 1) - this.depth(two, line, 1);
    return d1 === d0 ? Number.NaN : -d0 / (d1 - d0);
  }
}
