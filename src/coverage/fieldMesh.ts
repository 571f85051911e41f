import type { Conditions } from './curve.ts';

/** Numbers of a triangle: its corners counter-clockwise, and its edges from each to the next. */
export const TRIANGLE = 6;
/** Numbers of a bound: its corners, with the mesh on its left, and its edge. */
export const BOUND = 3;

/**
 * A mesh of triangles that meet edge to edge, with the values of some conditions at its corners. Coordinates are relative to
 * the foot of a lens, m.
 */
export class FieldMesh {
  readonly count: number;
  readonly conditions: Conditions;
  corners = 0;
  p: Float64Array = new Float64Array(4096);
  q: Float64Array = new Float64Array(4096);
  /** `count` numbers a corner. */
  values: Float64Array;
  /** The two corners of each edge. */
  readonly from: number[] = [];
  readonly to: number[] = [];
  triangles: number[] = [];
  bounds: number[] = [];

  constructor(conditions: Conditions, count: number) {
    this.conditions = conditions;
    this.count = count;
    this.values = new Float64Array(4096 * count);
  }

  addCorner(p: number, q: number): number {
    if (this.corners === this.p.length) {
      this.p = doubled(this.p);
      this.q = doubled(this.q);
      this.values = doubled(this.values);
    }
    this.p[this.corners] = p;
    this.q[this.corners] = q;
    this.conditions(p, q, this.values, this.corners * this.count);
    this.corners += 1;
    return this.corners - 1;
  }

  addEdge(from: number, to: number): number {
    this.from.push(from);
    this.to.push(to);
    return this.from.length - 1;
  }

  value(corner: number, condition: number): number {
    return this.values[corner * this.count + condition] ?? 0;
  }

  /** Puts corners into the middle of triangles: one each, by the triangle's place in the list. */
  fill(middles: ReadonlyMap<number, number>): void {
    const all = this.triangles;
    for (const [triangle, corner] of middles) {
      const [a = 0, b = 0, c = 0, ab = 0, bc = 0, ca = 0] = all.slice(
        triangle * TRIANGLE,
        triangle * TRIANGLE + TRIANGLE,
      );
      const [am, bm, cm] = [this.addEdge(a, corner), this.addEdge(b, corner), this.addEdge(c, corner)];
      all.splice(triangle * TRIANGLE, TRIANGLE, a, b, corner, ab, bm, am);
      all.push(b, c, corner, bc, cm, bm, c, a, corner, ca, am, cm);
    }
  }

  /** Splits edges at corners that lie on them, and all triangles and bounds of which they are edges. */
  split(marks: ReadonlyMap<number, number>): void {
    if (marks.size === 0) return;
    const halves = new Map<number, readonly [number, number]>();
    for (const [edge, corner] of marks)
      halves.set(edge, [
        this.addEdge(this.from[edge] ?? 0, corner),
        this.addEdge(corner, this.to[edge] ?? 0),
      ]);
    const half = (edge: number, corner: number): number => {
      const [one, two] = halves.get(edge) ?? [edge, edge];
      return this.from[edge] === corner ? one : two;
    };
    const kept: number[] = [];
    const waiting = this.triangles;
    while (waiting.length > 0) {
      const ca = waiting.pop() ?? 0;
      const bc = waiting.pop() ?? 0;
      const ab = waiting.pop() ?? 0;
      const c = waiting.pop() ?? 0;
      const b = waiting.pop() ?? 0;
      const a = waiting.pop() ?? 0;
      const middle = marks.get(ab);
      if (middle !== undefined) {
        const across = this.addEdge(middle, c);
        waiting.push(a, middle, c, half(ab, a), across, ca, middle, b, c, half(ab, b), bc, across);
      } else if (marks.has(bc)) waiting.push(b, c, a, bc, ca, ab);
      else if (marks.has(ca)) waiting.push(c, a, b, ca, ab, bc);
      else kept.push(a, b, c, ab, bc, ca);
    }
    this.triangles = kept;
    const bounds: number[] = [];
    for (let at = 0; at < this.bounds.length; at += BOUND) {
      const [a = 0, b = 0, ab = 0] = this.bounds.slice(at, at + BOUND);
      const middle = marks.get(ab);
      if (middle === undefined) bounds.push(a, b, ab);
      else bounds.push(a, middle, half(ab, a), middle, b, half(ab, b));
    }
    this.bounds = bounds;
  }
}

function doubled(list: Float64Array): Float64Array {
  const longer = new Float64Array(list.length * 2);
  longer.set(list);
  return longer;
}
