import { ARC, type ArcRings } from './arcRings.ts';
import { EdgeGrid } from './edgeGrid.ts';
import { Lattice } from './lattice.ts';

/** The edges of several regions, where they cross, and how many other regions lie at the start of each ring. */
export class Crossings {
  readonly lattice: Lattice;
  /** Edge i runs from corner i to corner to[i]. */
  readonly to: Int32Array;
  readonly region: Int32Array;
  /** First edge of each ring, and the end. */
  readonly starts: Int32Array;
  /** ARC numbers an edge; null where all are straight. */
  readonly arcs: Float64Array | null;
  /** How many other regions cover the start of each ring. */
  readonly covers: Int32Array;
  /** Events of edge i are those from first[i] up to first[i + 1], in order along it. */
  readonly first: Int32Array;
  /** Of each event: share of the edge, +1 into or −1 out of another region, and the other edge's event. */
  readonly share: Float64Array;
  readonly turn: Int8Array;
  readonly twin: Int32Array;

  private crossed: Int32Array;
  private shares: Float64Array;
  private count = 0;
  private readonly far: number;

  constructor(regions: readonly ArcRings[]) {
    const edges = regions.reduce((sum, { corners }) => sum + corners.length / 2, 0);
    const rings = regions.reduce((sum, { starts }) => sum + starts.length - 1, 0);
    this.far = edges;
    this.lattice = laid(regions, edges);
    this.to = new Int32Array(edges);
    this.region = new Int32Array(edges);
    this.starts = new Int32Array(rings + 1);
    this.arcs = regions.some(({ arcs }) => arcs !== null) ? new Float64Array(edges * ARC) : null;
    this.covers = new Int32Array(rings);
    this.crossed = new Int32Array(edges * 3 + 96);
    this.shares = new Float64Array(edges * 2 + 64);
    this.join(regions);
    const grid = new EdgeGrid(this.lattice, this.to);
    let current = 0;
    const meet = (other: number): void => this.meet(current, other);
    for (; current < edges; current += 1) {
      if (this.region[current] !== this.region[current - 1]) grid.enter();
      grid.meet(current, meet);
    }
    grid.enter();
    this.first = new Int32Array(edges + 1);
    this.share = new Float64Array(this.count * 2);
    this.turn = new Int8Array(this.count * 2);
    this.twin = new Int32Array(this.count * 2);
    this.sort(edges);
    this.coverStarts(grid);
  }

  private join(regions: readonly ArcRings[]): void {
    let [edge, ring] = [0, 0];
    regions.forEach(({ starts, arcs }, region) => {
      const base = edge;
      for (let at = 0; at + 1 < starts.length; at += 1) {
        const [from, end] = [base + (starts[at] ?? 0), base + (starts[at + 1] ?? 0)];
        this.starts[ring] = from;
        ring += 1;
        for (; edge < end; edge += 1) {
          this.to[edge] = edge + 1 < end ? edge + 1 : from;
          this.region[edge] = region;
        }
      }
      if (arcs !== null) this.arcs?.set(arcs, base * ARC);
    });
    this.starts[ring] = edge;
  }

  /** Notes the crossing of an edge s with another one t, if there is one. */
  private meet(s: number, t: number): void {
    const { lattice, to } = this;
    const b = to[s] ?? 0;
    const d = to[t] ?? 0;
    const cLeft = lattice.isLeft(s, b, t);
    const cTwice = lattice.twice;
    const dLeft = lattice.isLeft(s, b, d);
    const dTwice = lattice.twice;
    if (cLeft === dLeft) return;
    const aLeft = lattice.isLeft(t, d, s);
    const aTwice = lattice.twice;
    const bLeft = lattice.isLeft(t, d, b);
    const bTwice = lattice.twice;
    if (aLeft === bLeft) return;
    // Edges of one line never come here: the hair by which corners are moved goes the same way for all of them.
    this.note(s, t, bLeft, aTwice / (aTwice - bTwice), cTwice / (cTwice - dTwice));
  }

  private note(s: number, t: number, enters: boolean, u: number, v: number): void {
    if (this.count * 3 === this.crossed.length) {
      const [crossed, shares] = [new Int32Array(this.count * 6), new Float64Array(this.count * 4)];
      crossed.set(this.crossed);
      shares.set(this.shares);
      [this.crossed, this.shares] = [crossed, shares];
    }
    const at = this.count * 3;
    this.crossed[at] = s;
    this.crossed[at + 1] = t;
    this.crossed[at + 2] = enters ? 1 : -1;
    this.shares[this.count * 2] = u;
    this.shares[this.count * 2 + 1] = v;
    this.count += 1;
  }

  /** Sorts events by edge and along each edge. */
  private sort(edges: number): void {
    const { first, crossed, shares, count, share, turn, twin } = this;
    for (let at = 0; at < count; at += 1) {
      const s = crossed[at * 3] ?? 0;
      const t = crossed[at * 3 + 1] ?? 0;
      first[s + 1] = (first[s + 1] ?? 0) + 1;
      first[t + 1] = (first[t + 1] ?? 0) + 1;
    }
    for (let edge = 0; edge < edges; edge += 1) first[edge + 1] = (first[edge + 1] ?? 0) + (first[edge] ?? 0);
    const filled = first.slice();
    // Event 2·i of crossing i is that of s, 2·i + 1 that of t; sorted into place by insertion.
    const order = new Int32Array(count * 2);
    for (let event = 0; event < count * 2; event += 1) {
      const edge = crossed[(event >> 1) * 3 + (event & 1)] ?? 0;
      const begin = first[edge] ?? 0;
      let place = filled[edge] ?? 0;
      filled[edge] = place + 1;
      const here = shares[event] ?? 0;
      while (place > begin && (shares[order[place - 1] ?? 0] ?? 0) > here) {
        order[place] = order[place - 1] ?? 0;
        place -= 1;
      }
      order[place] = event;
    }
    const places = new Int32Array(count * 2);
    for (let place = 0; place < count * 2; place += 1) places[order[place] ?? 0] = place;
    for (let place = 0; place < count * 2; place += 1) {
      const event = order[place] ?? 0;
      share[place] = shares[event] ?? 0;
      const enters = crossed[(event >> 1) * 3 + 2] ?? 0;
      turn[place] = (event & 1) === 0 ? enters : -enters;
      twin[place] = places[event ^ 1] ?? 0;
    }
  }

  /** Counts the other regions around the first corner of each ring by a ray. */
  private coverStarts(grid: EdgeGrid): void {
    const { lattice, starts, to, region, far } = this;
    const { x, y } = lattice;
    x[far] = 2 ** 38;
    let [corner, own, cover] = [0, 0, 0];
    const pass = (edge: number): void => {
      if (region[edge] === own) return;
      const end = to[edge] ?? 0;
      const here = y[corner] ?? 0;
      const cy = y[edge] ?? 0;
      const dy = y[end] ?? 0;
      if ((cy < here && dy < here) || (cy > here && dy > here)) return;
      const start = x[corner] ?? 0;
      if ((x[edge] ?? 0) < start && (x[end] ?? 0) < start) return;
      const fromAbove = lattice.isLeft(corner, far, edge);
      if (fromAbove === lattice.isLeft(corner, far, end)) return;
      if (lattice.isLeft(edge, end, corner) === lattice.isLeft(edge, end, far)) return;
      cover += fromAbove ? -1 : 1;
    };
    for (let ring = 0; ring + 1 < starts.length; ring += 1) {
      const [begin, end] = [starts[ring] ?? 0, starts[ring + 1] ?? 0];
      if (begin === end) continue;
      // The rightmost corner has the shortest ray; from it the count is carried back to the ring's start.
      corner = begin;
      for (let at = begin; at < end; at += 1) if ((x[at] ?? 0) > (x[corner] ?? 0)) corner = at;
      own = region[begin] ?? 0;
      cover = 0;
      y[far] = y[corner] ?? 0;
      grid.along(x[corner] ?? 0, y[corner] ?? 0, pass);
      for (let event = this.first[begin] ?? 0; event < (this.first[corner] ?? 0); event += 1)
        cover -= this.turn[event] ?? 0;
      this.covers[ring] = cover;
    }
  }
}

/** All corners on one lattice, and a place for one more. */
function laid(regions: readonly ArcRings[], edges: number): Lattice {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { corners } of regions)
    for (let at = 0; at < corners.length; at += 2) {
      const [a, b] = [corners[at] ?? 0, corners[at + 1] ?? 0];
      if (a < left) left = a;
      if (a > right) right = a;
      if (b < bottom) bottom = b;
      if (b > top) top = b;
    }
  const lattice = new Lattice(
    edges + 1,
    edges === 0 ? { left: 0, bottom: 0, right: 1, top: 1 } : { left, bottom, right, top },
  );
  let edge = 0;
  for (const { corners } of regions)
    for (let at = 0; at < corners.length; at += 2, edge += 1)
      lattice.put(edge, corners[at] ?? 0, corners[at + 1] ?? 0);
  return lattice;
}
