import { ShadowBins } from './shadowBins.ts';
import { BOX, STRIDE, type Shadows } from './shadows.ts';
import type { HalfPlanes } from './halfPlanes.ts';

/** Two lines nearer than this over the whole window, in metres, are one line. */
export const SAME_LINE = 1e-9;

/** A line a·p + b·q + k = 0 with its positive side to the left of the direction (b, −a). */
export interface Line {
  readonly a: number;
  readonly b: number;
  readonly k: number;
}

/** Stretches of a line: pairs of parameters from < to, ascending and apart. */
export class Stretches {
  private readonly ends: number[] = [];

  reset(from: number, to: number): void {
    this.ends.length = 0;
    if (from < to) this.ends.push(from, to);
  }

  get empty(): boolean {
    return this.ends.length === 0;
  }

  get first(): number {
    return this.ends[0] ?? Number.NaN;
  }

  get last(): number {
    return this.ends[this.ends.length - 1] ?? Number.NaN;
  }

  remove(from: number, to: number): void {
    const { ends } = this;
    if (!(from < to) || to <= this.first || from >= this.last) return;
    for (let at = 0; at < ends.length;) {
      const [low, high] = [ends[at] ?? 0, ends[at + 1] ?? 0];
      if (to <= low || from >= high) at += 2;
      else if (from > low && to < high) {
        ends.splice(at + 1, 0, from, to);
        return;
      } else if (from > low) {
        ends[at + 1] = from;
        at += 2;
      } else if (to < high) {
        ends[at] = to;
        return;
      } else ends.splice(at, 2);
    }
  }

  each(visit: (from: number, to: number) => void): void {
    for (let at = 0; at < this.ends.length; at += 2) visit(this.ends[at] ?? 0, this.ends[at + 1] ?? 0);
  }
}

/**
 * Where a line runs within half-planes: from and to, possibly from ≥ to.
 * @param edges whether a line along an edge counts as within
 */
export function withinHalfPlanes(
  line: Line,
  halfPlanes: HalfPlanes,
  radius: number,
  edges = true,
): readonly [number, number] {
  let from = -Infinity;
  let to = Infinity;
  for (const [a, b, k] of halfPlanes) {
    const slope = a * line.b - b * line.a;
    const here = k - line.k * (a * line.a + b * line.b);
    if (Math.abs(slope) * radius < SAME_LINE) {
      if (here < (edges ? -SAME_LINE : SAME_LINE)) return [0, 0];
      continue;
    }
    if (slope > 0) from = Math.max(from, -here / slope);
    else to = Math.min(to, -here / slope);
  }
  return [from, to];
}

/** The shadows that can touch the box of a stretch of a line, tested one after the other. */
export class ShadowLine {
  private readonly shadows: Shadows;
  private readonly radius: number;
  private readonly bins: ShadowBins;

  /** @param radius greatest distance from the foot to a point of any line asked about, m */
  constructor(shadows: Shadows, radius: number) {
    this.shadows = shadows;
    this.radius = radius;
    this.bins = new ShadowBins(shadows, radius);
  }

  /** The stretch of a side of a shadow's boundary that its own other sides leave. */
  own(shadow: number, side: number, line: Line): readonly [number, number] {
    let from = -Infinity;
    let to = Infinity;
    const base = shadow * STRIDE;
    const { numbers, sides } = this.shadows;
    for (let other = 0; other < (sides[shadow] ?? 0); other += 1) {
      if (other === side) continue;
      const at = base + other * 3;
      const [a, b] = [numbers[at] ?? 0, numbers[at + 1] ?? 0];
      const slope = a * line.b - b * line.a;
      const here = (numbers[at + 2] ?? 0) - line.k * (a * line.a + b * line.b);
      if (Math.abs(slope) * this.radius < SAME_LINE) {
        // Of two sides on one line the first is the outline; a sliver between opposite sides is none.
        const twin = a * line.a + b * line.b > 0 && Math.abs(here) < SAME_LINE && side < other;
        if (here < SAME_LINE && !twin) return [0, 0];
      } else if (slope > 0) from = Math.max(from, -here / slope);
      else to = Math.min(to, -here / slope);
    }
    return [from, to];
  }

  /**
   * Takes from the stretches what other shadows cover just beside the line.
   * @param own  the shadow that the line bounds: asked is the point just outside it, on the right; −1 for the edge of
   *             a frame or window, asked just inside, on the left
   */
  subtract(line: Line, stretches: Stretches, own: number): void {
    if (stretches.empty) return;
    const [first, last] = [stretches.first, stretches.last];
    const [p0, q0] = [-line.k * line.a + first * line.b, -line.k * line.b - first * line.a];
    const [p1, q1] = [-line.k * line.a + last * line.b, -line.k * line.b - last * line.a];
    const [left, right] = [Math.min(p0, p1), Math.max(p0, p1)];
    const [bottom, top] = [Math.min(q0, q1), Math.max(q0, q1)];
    const { numbers } = this.shadows;
    this.bins.along(p0, q0, p1, q1, (shadow) => {
      const box = shadow * STRIDE + BOX;
      const misses =
        shadow === own ||
        right < (numbers[box] ?? 0) ||
        left > (numbers[box + 2] ?? 0) ||
        top < (numbers[box + 1] ?? 0) ||
        bottom > (numbers[box + 3] ?? 0);
      if (!misses) this.take(shadow, line, stretches, own);
      return stretches.empty;
    });
  }

  private take(shadow: number, line: Line, stretches: Stretches, own: number): void {
    const { numbers, sides } = this.shadows;
    const base = shadow * STRIDE;
    const end = base + (sides[shadow] ?? 0) * 3;
    let from = stretches.first;
    let to = stretches.last;
    let [same, opposite] = [false, false];
    for (let side = base; side < end && from < to; side += 3) {
      const a = numbers[side] ?? 0;
      const b = numbers[side + 1] ?? 0;
      const along = a * line.a + b * line.b;
      const slope = a * line.b - b * line.a;
      const here = (numbers[side + 2] ?? 0) - line.k * along;
      if (Math.abs(slope) * this.radius < SAME_LINE) {
        if (here < -SAME_LINE) to = from;
        else if (here < SAME_LINE) {
          if (along > 0) same = true;
          else opposite = true;
          // A sliver with both of its sides on the line covers neither side of it.
          if ((same && opposite) || !coversBeside(along > 0, own >= 0, shadow, own)) to = from;
        }
      } else if (slope > 0) from = Math.max(from, -here / slope);
      else to = Math.min(to, -here / slope);
    }
    stretches.remove(from, to);
  }
}

/** Whether a shadow whose edge lies on the line covers the side that is asked for. */
function coversBeside(sameSense: boolean, outside: boolean, shadow: number, own: number): boolean {
  if (!outside) return sameSense;
  // Of two shadows that share an edge with the same sense, the lower index keeps it.
  return sameSense ? shadow < own : true;
}
