import { Curve, type Conditions, type Crossing } from './curve.ts';
import { lensNumbers, nearest2, type LensOver } from './nearestLens.ts';
import { BENT, COARSE, CORRECTION_SLACK, DEEPEST, DIP, FINE, FINEST } from './pieceSizes.ts';
import { ShareAbove } from './shareAbove.ts';

export interface FoundArea {
  readonly value: number;
  /** What the value may be off by, from the parts that a curve cuts. */
  readonly bound: number;
}

/**
 * The areas of the parts of some triangles in which sets of conditions hold. Triangles are halved along their longest
 * edge until a curve cuts them simply; there it is followed by its chord and the sagitta at the chord's middle, which
 * leaves an error of fourth order.
 * @param triangles six numbers a triangle, m
 * @param count     of conditions, at most 31
 * @param sets      at most 31 sets of condition indices, all of which must hold together
 * @param lenses    where curves come from: the distance to the nearest lens sets how fine pieces are made
 * @returns         one area a set
 */
export function areasWhere(
  triangles: Float64Array,
  conditions: Conditions,
  count: number,
  sets: readonly (readonly number[])[],
  lenses: readonly LensOver[],
): readonly FoundArea[] {
  const walk = new Walk(conditions, count, sets, lenses);
  for (let at = 0; at < triangles.length; at += 6) walk.start(triangles, at);
  return sets.map((_, set) => ({ value: Math.max(0, walk.areas[set] ?? 0), bound: walk.slacks[set] ?? 0 }));
}

/** Corners live in slots: coordinates and values in flat arrays; the middle of an edge halved at depth d has slot 3 + d. */
class Walk {
  readonly areas: Float64Array;
  readonly slacks: Float64Array;
  private readonly p = new Float64Array(DEEPEST + 8);
  private readonly q = new Float64Array(DEEPEST + 8);
  private readonly values: Float64Array;
  private readonly curve: Curve;
  private readonly above = new ShareAbove();
  private readonly conditions: Conditions;
  private readonly count: number;
  private readonly sets: readonly (readonly number[])[];
  /** One bit a condition of each set. */
  private readonly masks: Int32Array;
  private readonly lenses: Float64Array;
  /** The piece at hand, and by condition the piece in which its curve was followed last, with what came of it. */
  private piece = 0;
  private readonly followed: Int32Array;
  private readonly kept: Float64Array;
  private readonly bulges: Float64Array;
  private readonly chords2: Float64Array;
  /** Which other conditions fail on that curve, one bit each. */
  private readonly failing: Int32Array;
  private readonly middle: Float64Array;

  constructor(
    conditions: Conditions,
    count: number,
    sets: readonly (readonly number[])[],
    lenses: readonly LensOver[],
  ) {
    this.conditions = conditions;
    this.count = count;
    this.sets = sets;
    this.masks = Int32Array.from(sets, (set) => set.reduce((mask, i) => mask | (1 << i), 0));
    this.lenses = lensNumbers(lenses);
    this.areas = new Float64Array(sets.length);
    this.slacks = new Float64Array(sets.length);
    this.values = new Float64Array((DEEPEST + 8) * count);
    this.curve = new Curve(conditions, count);
    this.followed = new Int32Array(count);
    this.kept = new Float64Array(count);
    this.bulges = new Float64Array(count);
    this.chords2 = new Float64Array(count);
    this.failing = new Int32Array(count);
    this.middle = new Float64Array(count);
  }

  start(triangles: Float64Array, at: number): void {
    for (let corner = 0; corner < 3; corner += 1)
      this.put(corner, triangles[at + corner * 2] ?? 0, triangles[at + corner * 2 + 1] ?? 0);
    this.visit(0, 1, 2, 0, 2 ** this.sets.length - 1);
  }

  private put(slot: number, p: number, q: number): void {
    this.p[slot] = p;
    this.q[slot] = q;
    this.conditions(p, q, this.values, slot * this.count);
  }

  private visit(a: number, b: number, c: number, depth: number, open: number): void {
    const { p, q } = this;
    const [pa, pb, pc] = [p[a] ?? 0, p[b] ?? 0, p[c] ?? 0];
    const [qa, qb, qc] = [q[a] ?? 0, q[b] ?? 0, q[c] ?? 0];
    const size = Math.abs((pb - pa) * (qc - qa) - (pc - pa) * (qb - qa)) / 2;
    if (size === 0) return;
    const ab = (pb - pa) * (pb - pa) + (qb - qa) * (qb - qa);
    const bc = (pc - pb) * (pc - pb) + (qc - qb) * (qc - qb);
    const ca = (pa - pc) * (pa - pc) + (qa - qc) * (qa - qc);
    const share2 = Math.max(ab, bc, ca) / nearest2(this.lenses, pa, qa, pb, qb, pc, qc);
    let still = open;
    if (share2 <= COARSE * COARSE || depth >= DEEPEST)
      still = this.settle(a, b, c, size, share2, open, depth >= DEEPEST);
    if (still === 0 || depth >= DEEPEST) return;
    if (ab >= bc && ab >= ca) this.halve(a, b, c, depth, still);
    else if (bc >= ca) this.halve(b, c, a, depth, still);
    else this.halve(c, a, b, depth, still);
  }

  private halve(a: number, b: number, c: number, depth: number, open: number): void {
    const middle = 3 + depth;
    this.put(middle, ((this.p[a] ?? 0) + (this.p[b] ?? 0)) / 2, ((this.q[a] ?? 0) + (this.q[b] ?? 0)) / 2);
    this.visit(a, middle, c, depth + 1, open);
    this.visit(middle, b, c, depth + 1, open);
  }

  /** Adds what is decided to each open set's area; the sets for which the piece must be halved. */
  private settle(
    a: number,
    b: number,
    c: number,
    size: number,
    share2: number,
    open: number,
    last: boolean,
  ): number {
    const { values, count } = this;
    this.piece += 1;
    // One bit a condition: cut by its curve, its curve close by, fails at all corners, fails well away from its curve.
    let [cut, close, none, far] = [0, 0, 0, 0];
    let asked = 0;
    for (let set = 0; set < this.masks.length; set += 1)
      if ((open & (1 << set)) !== 0) asked |= this.masks[set] ?? 0;
    for (let i = 0; i < count; i += 1) {
      if ((asked & (1 << i)) === 0) continue;
      const va = values[a * count + i] ?? 0;
      const vb = values[b * count + i] ?? 0;
      const vc = values[c * count + i] ?? 0;
      const least = va < vb ? (va < vc ? va : vc) : vb < vc ? vb : vc;
      const most = va > vb ? (va > vc ? va : vc) : vb > vc ? vb : vc;
      const room = 2 * (most - least);
      if (most < 0) {
        none |= 1 << i;
        if (-most > room) far |= 1 << i;
        else close |= 1 << i;
      } else if (least < 0) cut |= 1 << i;
      else if (least <= room) close |= 1 << i;
    }
    const dips =
      share2 <= FINE * FINE && share2 > FINEST * FINEST && !last
        ? this.dips(a, b, asked) | this.dips(b, c, asked) | this.dips(c, a, asked)
        : 0;
    let still = 0;
    for (let set = 0; set < this.sets.length; set += 1) {
      const bit = 1 << set;
      const mask = this.masks[set] ?? 0;
      if ((open & bit) === 0 || (mask & far) !== 0) continue;
      if ((mask & dips) !== 0) {
        still |= bit;
        continue;
      }
      const cuts = mask & cut;
      const one = (cuts & (cuts - 1)) === 0;
      const fine = cuts !== 0 && !one ? FINEST : cuts !== 0 || (mask & close) !== 0 ? FINE : COARSE;
      if (share2 > fine * fine && !last) still |= bit;
      else if ((mask & none) !== 0) continue;
      else if (cuts === 0) this.areas[set] = (this.areas[set] ?? 0) + size;
      else if (!one) this.straight(set, a, b, c, size);
      else {
        const isLast = last || share2 <= FINEST * FINEST;
        if (!this.curved(set, 31 - Math.clz32(cuts), a, b, c, size, mask & ~cut, isLast)) still |= bit;
      }
    }
    return still;
  }

  /**
   * The conditions whose curve crosses an edge twice, one bit each. It hangs on the edge alone, so that the pieces on both
   * sides are halved: were one of them, what lies between edge and curve would count on neither side.
   */
  private dips(a: number, b: number, asked: number): number {
    const { values, count, middle } = this;
    let found = 0;
    let isKnown = false;
    let bend = -1;
    for (let i = 0; i < count; i += 1) {
      if ((asked & (1 << i)) === 0) continue;
      const va = values[a * count + i] ?? 0;
      const vb = values[b * count + i] ?? 0;
      if (va >= 0 !== vb >= 0 || Math.abs(va + vb) > DIP) continue;
      if (bend < 0) bend = this.bend(a, b);
      if (Math.abs(va + vb) > bend) continue;
      if (!isKnown)
        this.conditions(
          ((this.p[a] ?? 0) + (this.p[b] ?? 0)) / 2,
          ((this.q[a] ?? 0) + (this.q[b] ?? 0)) / 2,
          middle,
          0,
        );
      isKnown = true;
      if ((middle[i] ?? 0) >= 0 !== va >= 0) found |= 1 << i;
    }
    return found;
  }

  /** What DIP is for an edge as short as this one. */
  private bend(a: number, b: number): number {
    const [pa, qa, pb, qb] = [this.p[a] ?? 0, this.q[a] ?? 0, this.p[b] ?? 0, this.q[b] ?? 0];
    const long2 = (pb - pa) * (pb - pa) + (qb - qa) * (qb - qa);
    return (DIP / (FINE * FINE)) * (long2 / nearest2(this.lenses, pa, qa, pb, qb, pb, qb));
  }

  /**
   * One curve cuts the piece: chord between its two crossings, and the parabola through its middle.
   * @param others the set's other conditions, which hold at all corners
   * @returns false where it bends too much for that, or one of the others fails on it, and the piece may be halved
   */
  private curved(
    set: number,
    i: number,
    a: number,
    b: number,
    c: number,
    size: number,
    others: number,
    last: boolean,
  ): boolean {
    // Sets share conditions: the curve of one through this piece is followed once.
    if (this.followed[i] !== this.piece) this.follow(i, a, b, c, size);
    const bulge = this.bulges[i] ?? 0;
    if (!last && Math.abs(bulge) > BENT * (this.chords2[i] ?? 0)) return false;
    // Where a bent law ends density can fall to nothing, and rise again beyond: corners on both sides do not tell.
    if (!last && ((this.failing[i] ?? 0) & others) !== 0) return false;
    // A bulge may reach over the piece's edge: the neighbour, whose corners do not tell of it, leaves it to this one.
    this.areas[set] = (this.areas[set] ?? 0) + (this.kept[i] ?? 0) + bulge;
    this.slacks[set] = (this.slacks[set] ?? 0) + Math.abs(bulge) * CORRECTION_SLACK;
    return true;
  }

  /** Leaves behind what a condition keeps of the present piece: by its chord, the bulge over it, the chord squared, and what fails. */
  private follow(i: number, a: number, b: number, c: number, size: number): void {
    const [ha, hb, hc] = [this.holds(a, i), this.holds(b, i), this.holds(c, i)];
    const lone = ha === hb ? c : hb === hc ? a : b;
    const one = this.crossing(lone, lone === a ? b : lone === b ? c : a, i);
    let failing = this.fails();
    const two = this.crossing(lone, lone === a ? c : lone === b ? a : b, i);
    failing |= this.fails();
    const loneCounts = this.holds(lone, i);
    const corner = size * one.share * two.share;
    this.followed[i] = this.piece;
    this.kept[i] = loneCounts ? corner : size - corner;
    this.bulges[i] = this.curve.bulge(i, one, two, this.p[lone] ?? 0, this.q[lone] ?? 0, loneCounts);
    this.chords2[i] = (one.p - two.p) ** 2 + (one.q - two.q) ** 2;
    this.failing[i] = failing | this.fails();
  }

  /** The conditions that do not hold where one was asked last: a bit each. */
  private fails(): number {
    const { probe } = this.curve;
    let found = 0;
    for (let i = 0; i < this.count; i += 1) if ((probe[i] ?? 0) < 0) found |= 1 << i;
    return found;
  }

  private crossing(from: number, to: number, i: number): Crossing {
    const value = (slot: number) => this.values[slot * this.count + i] ?? 0;
    const { p, q } = this;
    return this.curve.crossing(i, p[from] ?? 0, q[from] ?? 0, value(from), p[to] ?? 0, q[to] ?? 0, value(to));
  }

  /** Several curves meet in a piece this small: each is a straight line through the values at the corners. */
  private straight(set: number, a: number, b: number, c: number, size: number): void {
    const { values, count, above } = this;
    above.begin();
    for (const i of this.sets[set] ?? [])
      above.cut(values[a * count + i] ?? 0, values[b * count + i] ?? 0, values[c * count + i] ?? 0);
    this.areas[set] = (this.areas[set] ?? 0) + above.share * size;
    this.slacks[set] = (this.slacks[set] ?? 0) + size / 4;
  }

  private holds(slot: number, i: number): boolean {
    return (this.values[slot * this.count + i] ?? 0) >= 0;
  }
}
