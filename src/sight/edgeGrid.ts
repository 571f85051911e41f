import type { Lattice } from './lattice.ts';

/** How much wider than they are edges are entered, in units of the lattice, for rounding. */
const HAIR = 4096;
/** Cells a side at most. */
const MOST = 512;

/** Edges by the square cells that they pass, so that each meets few others. */
export class EdgeGrid {
  private readonly lattice: Lattice;
  private readonly to: Int32Array;
  private readonly left: number;
  private readonly bottom: number;
  private readonly perUnit: number;
  private readonly size: number;
  private readonly columns: number;
  private readonly rows: number;
  /** Lists: the latest entry of each cell, and of each entry its edge and the entry before. */
  private readonly heads: Int32Array;
  private edges: Int32Array;
  private before: Int32Array;
  private entries = 0;
  /** Cells and the edges that are to be entered into them. */
  private waiting: Int32Array = new Int32Array(1024);
  private waits = 0;
  private readonly stamps: Int32Array;
  private stamp = 0;

  /** @param to the end corner of each edge, which begins at the corner of its own number */
  constructor(lattice: Lattice, to: Int32Array) {
    this.lattice = lattice;
    this.to = to;
    const count = to.length;
    let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let corner = 0; corner < count; corner += 1) {
      const [x, y] = [lattice.x[corner] ?? 0, lattice.y[corner] ?? 0];
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < bottom) bottom = y;
      if (y > top) top = y;
    }
    const [width, height] = [Math.max(1, right - left), Math.max(1, top - bottom)];
    this.size = Math.max(
      Math.sqrt((width * height) / Math.max(1, count)),
      width / MOST,
      height / MOST,
      HAIR * 4,
    );
    this.perUnit = 1 / this.size;
    this.left = left - HAIR;
    this.bottom = bottom - HAIR;
    this.columns = Math.floor((width + 2 * HAIR) / this.size) + 1;
    this.rows = Math.floor((height + 2 * HAIR) / this.size) + 1;
    this.heads = new Int32Array(this.columns * this.rows).fill(-1);
    this.edges = new Int32Array(count * 4 + 64);
    this.before = new Int32Array(count * 4 + 64);
    this.stamps = new Int32Array(count).fill(-1);
  }

  /**
   * Visits once each edge entered before whose box meets that of an edge and that shares a cell with it; the edge itself
   * waits for `enter`, so that edges of one region do not meet.
   */
  meet(edge: number, visit: (other: number) => void): void {
    const { lattice, to, size, perUnit, left, bottom, stamps, columns, heads, edges, before } = this;
    const { x, y } = lattice;
    const end = to[edge] ?? 0;
    // One a line here and below: in these loops V8 makes an array of what is taken apart.
    const x0 = x[edge] ?? 0;
    const y0 = y[edge] ?? 0;
    const x1 = x[end] ?? 0;
    const y1 = y[end] ?? 0;
    const xMin = Math.min(x0, x1);
    const xMax = Math.max(x0, x1);
    const yMin = Math.min(y0, y1);
    const yMax = Math.max(y0, y1);
    const first = this.row(yMin - HAIR);
    const last = this.row(yMax + HAIR);
    const slope = y1 === y0 ? 0 : (x1 - x0) / (y1 - y0);
    this.stamp += 1;
    const { stamp } = this;
    for (let row = first; row <= last; row += 1) {
      let from = xMin;
      let till = xMax;
      if (first !== last && slope !== 0) {
        const low = bottom + row * size - HAIR - y0;
        const one = x0 + slope * low;
        const two = x0 + slope * (low + size + 2 * HAIR);
        from = Math.max(from, Math.min(one, two));
        till = Math.min(till, Math.max(one, two));
      }
      const final = row * columns + Math.min(columns - 1, Math.floor((till + HAIR - left) * perUnit));
      let cell = row * columns + Math.max(0, Math.floor((from - HAIR - left) * perUnit));
      for (; cell <= final; cell += 1) {
        for (let entry = heads[cell] ?? -1; entry >= 0; entry = before[entry] ?? -1) {
          const other = edges[entry] ?? 0;
          if (stamps[other] === stamp) continue;
          stamps[other] = stamp;
          const ending = to[other] ?? 0;
          const cx = x[other] ?? 0;
          const dx = x[ending] ?? 0;
          if ((cx < xMin && dx < xMin) || (cx > xMax && dx > xMax)) continue;
          const cy = y[other] ?? 0;
          const dy = y[ending] ?? 0;
          if ((cy < yMin && dy < yMin) || (cy > yMax && dy > yMax)) continue;
          visit(other);
        }
        this.wait(cell, edge);
      }
    }
  }

  /** Enters the edges that wait. */
  enter(): void {
    while (this.entries + this.waits > this.edges.length) {
      this.edges = grown(this.edges);
      this.before = grown(this.before);
    }
    for (let at = 0; at < this.waits; at += 1) {
      const cell = this.waiting[at * 2] ?? 0;
      this.edges[this.entries] = this.waiting[at * 2 + 1] ?? 0;
      this.before[this.entries] = this.heads[cell] ?? -1;
      this.heads[cell] = this.entries;
      this.entries += 1;
    }
    this.waits = 0;
  }

  /** Visits once each edge that shares a cell with the ray from a point towards positive x. */
  along(x: number, y: number, visit: (edge: number) => void): void {
    const row = this.row(y);
    this.stamp += 1;
    for (
      let column = Math.max(0, Math.floor((x - HAIR - this.left) * this.perUnit));
      column < this.columns;
      column += 1
    )
      for (
        let entry = this.heads[row * this.columns + column] ?? -1;
        entry >= 0;
        entry = this.before[entry] ?? -1
      ) {
        const edge = this.edges[entry] ?? 0;
        if (this.stamps[edge] === this.stamp) continue;
        this.stamps[edge] = this.stamp;
        visit(edge);
      }
  }

  private row(y: number): number {
    return Math.max(0, Math.min(this.rows - 1, Math.floor((y - this.bottom) * this.perUnit)));
  }

  private wait(cell: number, edge: number): void {
    if (this.waits * 2 === this.waiting.length) this.waiting = grown(this.waiting);
    this.waiting[this.waits * 2] = cell;
    this.waiting[this.waits * 2 + 1] = edge;
    this.waits += 1;
  }
}

function grown(list: Int32Array): Int32Array {
  const longer = new Int32Array(list.length * 2);
  longer.set(list);
  return longer;
}
