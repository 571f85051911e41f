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
   * Enters an edge, visiting once each edge entered before that shares a cell with it.
   * @param region of each edge: edges of the same region are not visited
   */
  enter(edge: number, region: Int32Array, visit: (other: number) => void): void {
    const { lattice, to, size, perUnit, left, bottom, stamps } = this;
    const end = to[edge] ?? 0;
    const [x0, y0, x1, y1] = [
      lattice.x[edge] ?? 0,
      lattice.y[edge] ?? 0,
      lattice.x[end] ?? 0,
      lattice.y[end] ?? 0,
    ];
    const [xMin, xMax] = [Math.min(x0, x1), Math.max(x0, x1)];
    const [yMin, yMax] = [Math.min(y0, y1) - HAIR, Math.max(y0, y1) + HAIR];
    const first = this.row(yMin);
    const last = this.row(yMax);
    const own = region[edge] ?? 0;
    const slope = y1 === y0 ? 0 : (x1 - x0) / (y1 - y0);
    this.stamp += 1;
    for (let row = first; row <= last; row += 1) {
      let [from, till] = [xMin, xMax];
      if (first !== last && slope !== 0) {
        const low = bottom + row * size - HAIR - y0;
        const [one, two] = [x0 + slope * low, x0 + slope * (low + size + 2 * HAIR)];
        from = Math.max(from, Math.min(one, two));
        till = Math.min(till, Math.max(one, two));
      }
      const lastColumn = Math.min(this.columns - 1, Math.floor((till + HAIR - left) * perUnit));
      for (
        let column = Math.max(0, Math.floor((from - HAIR - left) * perUnit));
        column <= lastColumn;
        column += 1
      ) {
        const cell = row * this.columns + column;
        for (let entry = this.heads[cell] ?? -1; entry >= 0; entry = this.before[entry] ?? -1) {
          const other = this.edges[entry] ?? 0;
          if (region[other] === own || stamps[other] === this.stamp) continue;
          stamps[other] = this.stamp;
          visit(other);
        }
        this.add(cell, edge);
      }
    }
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

  private add(cell: number, edge: number): void {
    if (this.entries === this.edges.length) {
      this.edges = grown(this.edges);
      this.before = grown(this.before);
    }
    this.edges[this.entries] = edge;
    this.before[this.entries] = this.heads[cell] ?? -1;
    this.heads[cell] = this.entries;
    this.entries += 1;
  }
}

function grown(list: Int32Array): Int32Array {
  const longer = new Int32Array(list.length * 2);
  longer.set(list);
  return longer;
}
