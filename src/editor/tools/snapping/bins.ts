import type { Vec2 } from '../../../base/vector.ts';

/** A rectangle over ground, m. */
export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** Side of a bin, m. */
const SIDE = 8;
/** A box over more bins than this is answered with all there is. */
const MANY = 2000;

const binOf = (value: number): number => Math.floor(value / SIDE);
// Ten thousand kilometres either way, so that two whole numbers make one.
const keyOf = (column: number, row: number): number => (column + 1e6) * 4e6 + row + 1e6;

/** Things by the squares of ground that they lie in or pass through. */
export class Bins<T> {
  private readonly bins = new Map<number, T[]>();
  private readonly all: T[] = [];

  /** Adds a thing that reaches straight from one point to another. */
  add(thing: T, from: Vec2, to: Vec2): void {
    this.all.push(thing);
    const pieces = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / SIDE));
    const seen = new Set<number>();
    for (let piece = 0; piece < pieces; piece += 1) {
      const at = (share: number): Vec2 => [
        from[0] + (to[0] - from[0]) * share,
        from[1] + (to[1] - from[1]) * share,
      ];
      const [a, b] = [at(piece / pieces), at((piece + 1) / pieces)];
      for (let column = binOf(Math.min(a[0], b[0])); column <= binOf(Math.max(a[0], b[0])); column += 1)
        for (let row = binOf(Math.min(a[1], b[1])); row <= binOf(Math.max(a[1], b[1])); row += 1)
          seen.add(keyOf(column, row));
    }
    for (const key of seen) {
      const bin = this.bins.get(key);
      if (bin) bin.push(thing);
      else this.bins.set(key, [thing]);
    }
  }

  /** All that may lie in a box, and some that lie near it; each once. */
  within({ left, bottom, right, top }: Box): readonly T[] {
    const [first, last, low, high] = [binOf(left), binOf(right), binOf(bottom), binOf(top)];
    // Written so that a box without bounds takes this way too.
    if (!((last - first + 1) * (high - low + 1) <= MANY)) return this.all;
    const found = new Set<T>();
    for (let column = first; column <= last; column += 1)
      for (let row = low; row <= high; row += 1)
        for (const thing of this.bins.get(keyOf(column, row)) ?? []) found.add(thing);
    return [...found];
  }
}
