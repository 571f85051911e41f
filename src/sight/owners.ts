import type { Vec2 } from '../base/vector.ts';
import { coverOf, sideOn, Nearest, type Cover } from './cover.ts';
import { crossingLines } from './crossingLines.ts';
import type { Bounds } from './region.ts';
import { ShadowBins } from './shadowBins.ts';
import { STRIDE, type Shadows } from './shadows.ts';
import { withinHalfPlanes, type Line } from './spans.ts';

/** A straight border between two owners; relative to the foot, m. */
interface Border {
  readonly from: Vec2;
  readonly to: Vec2;
  /** Owner code on the left and on the right of the way from → to; OUTSIDE beyond the window. */
  readonly left: number;
  readonly right: number;
}

/** Nothing hides here. */
export const SEEN = -1;
/** Beyond the window. */
const OUTSIDE = -2;

/** Farther along a line than any window reaches, m. */
const FAR = 1e9;

/** A window shared out among what hides first. */
export interface Partition {
  /** m² by owner code; SEEN among them. */
  readonly areas: ReadonlyMap<number, number>;
  readonly borders: readonly Border[];
}

/**
 * Shares a window out among the solids that hide each place first, exactly: every side of every shadow, and every line
 * where two faces cross in depth, is asked who is in front just left and just right of it. Sides that several shadows
 * share are asked once, by the lowest index, so that coplanar tops and abutting walls count once.
 * @param owner code of each shadow, ≥ 0: places are not told apart within one code
 * @param rank  of each shadow: a higher one hides before any depth (inside before solid before screen)
 */
export function shareOut(shadows: Shadows, owner: Int32Array, rank: Uint8Array, bounds: Bounds): Partition {
  return new Sharing(shadows, owner, rank, bounds).run();
}

class Sharing {
  private readonly areas = new Map<number, number>();
  private readonly borders: Border[] = [];
  /** Where along which line the last border ends. */
  private line: Line | null = null;
  private end = 0;
  private readonly bins: ShadowBins;
  private readonly nearest: Nearest;
  private readonly shadows: Shadows;
  private readonly owner: Int32Array;
  private readonly rank: Uint8Array;
  private readonly bounds: Bounds;

  constructor(shadows: Shadows, owner: Int32Array, rank: Uint8Array, bounds: Bounds) {
    this.shadows = shadows;
    this.owner = owner;
    this.rank = rank;
    this.bounds = bounds;
    this.bins = new ShadowBins(shadows, bounds.radius);
    this.nearest = new Nearest(shadows, rank);
  }

  run(): Partition {
    const { bounds, shadows } = this;
    bounds.halfPlanes.forEach(([a, b, k], at) => {
      const line = { a, b, k };
      const others = bounds.halfPlanes.filter((_, other) => other !== at);
      this.walk(line, withinHalfPlanes(line, others, bounds.radius), Infinity, true);
    });
    for (let shadow = 0; shadow < shadows.count; shadow += 1)
      for (let side = 0; side < (shadows.sides[shadow] ?? 0); side += 1) this.side(shadow, side);
    for (const { line, from, to } of crossingLines(shadows, this.owner, this.rank, bounds.radius))
      this.inside(line, [from, to], Infinity);
    return { areas: this.areas, borders: this.borders };
  }

  private side(shadow: number, side: number): void {
    const at = shadow * STRIDE + side * 3;
    const { numbers } = this.shadows;
    const line = { a: numbers[at] ?? 0, b: numbers[at + 1] ?? 0, k: numbers[at + 2] ?? 0 };
    // Two sides of one shadow can share a line: the foot of a wall and the cut at the ground.
    if (sideOn(this.shadows, shadow, line, this.bounds.radius) < side) return;
    const own = coverOf(this.shadows, shadow, line, [-FAR, FAR], this.bounds.radius);
    if (own !== null) this.inside(line, [own.from, own.to], shadow);
  }

  /** A line within the window; along one of its bounds the bound itself has been asked. */
  private inside(line: Line, range: readonly [number, number], shadow: number): void {
    const { halfPlanes, radius } = this.bounds;
    for (const [a, b, k] of halfPlanes) {
      const slope = a * line.b - b * line.a;
      if (Math.abs(slope) * radius < 1e-9 && Math.abs(k - line.k * (a * line.a + b * line.b)) < 1e-9) return;
    }
    const [from, to] = withinHalfPlanes(line, halfPlanes, radius);
    this.walk(line, [Math.max(from, range[0]), Math.min(to, range[1])], shadow, false);
  }

  /** Asks along a stretch who is in front on either side. */
  private walk(line: Line, [from, to]: readonly [number, number], shadow: number, isBound: boolean): void {
    if (!(to - from > 1e-9)) return;
    const { shadows, bounds } = this;
    const covers: Cover[] = [];
    const breaks: number[] = [from, to];
    const taken: Cover[] = [];
    const point = (t: number): Vec2 => [-line.k * line.a + t * line.b, -line.k * line.b - t * line.a];
    const [p0, p1] = [point(from), point(to)];
    this.bins.along(p0[0], p0[1], p1[0], p1[1], (other) => {
      const cover = coverOf(shadows, other, line, [from, to], bounds.radius);
      if (cover === null) return false;
      covers.push(cover);
      breaks.push(cover.from, cover.to);
      // A side on this line of a shadow that comes earlier has been asked over its own stretch.
      if (!isBound && other < shadow && sideOn(shadows, other, line, bounds.radius) >= 0) taken.push(cover);
      return false;
    });
    breaks.sort((one, two) => one - two);
    for (let at = 0; at + 1 < breaks.length; at += 1) {
      const [low, high] = [breaks[at] ?? 0, breaks[at + 1] ?? 0];
      const middle = (low + high) / 2;
      if (high - low < 1e-12 || taken.some((cover) => middle > cover.from && middle < cover.to)) continue;
      const here = covers.filter((cover) => middle > cover.from && middle < cover.to);
      this.ask(line, low, high, here, isBound, 0);
    }
  }

  /** A stretch over which the same shadows lie: halved where who is in front changes along it. */
  private ask(
    line: Line,
    from: number,
    to: number,
    covers: readonly Cover[],
    isBound: boolean,
    depth: number,
  ): void {
    const hair = (to - from) * 1e-6;
    const [start, end] = [from + hair, to - hair];
    const left = this.nearest.at(covers, line, start, true);
    const right = isBound ? -1 : this.nearest.at(covers, line, start, false);
    const leftEnd = this.nearest.at(covers, line, end, true);
    const rightEnd = isBound ? -1 : this.nearest.at(covers, line, end, false);
    const turn = left !== leftEnd ? [left, leftEnd] : right !== rightEnd ? [right, rightEnd] : null;
    if (turn !== null && depth < 40 && to - from > 1e-9) {
      const cross = this.nearest.crossing(turn[0] ?? 0, turn[1] ?? 0, line);
      const cut = cross > from + hair && cross < to - hair ? cross : (from + to) / 2;
      this.ask(line, from, cut, covers, isBound, depth + 1);
      this.ask(line, cut, to, covers, isBound, depth + 1);
      return;
    }
    this.put(line, from, to, this.ownerOf(left), isBound ? OUTSIDE : this.ownerOf(right));
  }

  private ownerOf(shadow: number): number {
    return shadow < 0 ? SEEN : (this.owner[shadow] ?? SEEN);
  }

  private put(line: Line, from: number, to: number, left: number, right: number): void {
    if (left === right) return;
    const half = (line.k * (to - from)) / 2;
    this.areas.set(left, (this.areas.get(left) ?? 0) + half);
    if (right !== OUTSIDE) this.areas.set(right, (this.areas.get(right) ?? 0) - half);
    const at = (t: number): Vec2 => [-line.k * line.a + t * line.b, -line.k * line.b - t * line.a];
    // What was halved down to a corner is one border again: many of them are too short for their ends to be told apart.
    const before = this.borders.at(-1);
    const goesOn = line === this.line && from === this.end && before?.left === left && before.right === right;
    const start = goesOn ? before.from : at(from);
    if (goesOn) this.borders.pop();
    this.borders.push({ from: start, to: at(to), left, right });
    this.line = line;
    this.end = to;
  }
}
