import type { Vec2 } from '../base/vector.ts';
import type { ArcRings } from '../sight/arcRings.ts';
import { Curve } from './curve.ts';
import { BOUND, TRIANGLE, type FieldMesh } from './fieldMesh.ts';
import type { LensOver } from './nearestLens.ts';
import { sagittaOf } from './sagitta.ts';

/** Chords of one arc are no longer than this share of their distance from the lens. */
const LONGEST = 0.13;
/** Nor does the curve turn more than this from one chord to the next, rad. */
const BEND_RAD = 0.35;
/** Arcs are laid out in chords of no more sagitta than this, m. */
const SAGITTA = 2e-3;
const MOST_CHORDS = 48;
/** An arc of more sagitta than this share of its chord is halved, and its halves, so often at most. */
const TIGHT = 0.02;
const DEEPEST = 6;
const NOWHERE: Vec2 = [0, 0];

/**
 * The part of a mesh in which one condition holds, as rings of arcs: by its signs at the corners, and along the curve itself
 * between them. The arcs' areas are exact to fourth order.
 */
export class LevelCurve {
  private readonly mesh: FieldMesh;
  private readonly sources: readonly LensOver[];
  private readonly curve: Curve;
  /** The point that follows each: one an edge of the mesh, where the curve crosses it, then one a corner. */
  private readonly next: Int32Array;
  private readonly edges: number;
  private readonly probe: Float64Array;
  private condition = 0;
  private corners: number[] = [];
  private arcs: number[] = [];

  /** @param sources where curves come from: the distance to the nearest sets how long chords may be */
  constructor(mesh: FieldMesh, sources: readonly LensOver[]) {
    this.mesh = mesh;
    this.sources = sources;
    this.curve = new Curve(mesh.conditions, mesh.count);
    this.edges = mesh.from.length;
    this.next = new Int32Array(this.edges + mesh.corners);
    this.probe = new Float64Array(mesh.count);
  }

  /** Rings relative to the foot; null where the condition holds everywhere. */
  rings(condition: number): ArcRings | null {
    this.condition = condition;
    this.next.fill(-1);
    if (!this.march()) return null;
    this.bound();
    this.corners = [];
    this.arcs = [];
    const starts = [0];
    for (let point = 0; point < this.next.length; point += 1) {
      if ((this.next[point] ?? -1) < 0) continue;
      this.ring(this.cycle(point));
      const begun = starts[starts.length - 1] ?? 0;
      if (this.corners.length / 2 > begun) starts.push(this.corners.length / 2);
    }
    return {
      corners: Float64Array.from(this.corners),
      starts: Int32Array.from(starts),
      arcs: Float64Array.from(this.arcs),
    };
  }

  private holds(corner: number): boolean {
    return this.mesh.value(corner, this.condition) >= 0;
  }

  /** Goes through all triangles; false where the condition holds at all corners. */
  private march(): boolean {
    const { triangles } = this.mesh;
    let some = false;
    for (let at = 0; at < triangles.length; at += TRIANGLE) {
      const ha = this.holds(triangles[at] ?? 0);
      const hb = this.holds(triangles[at + 1] ?? 0);
      const hc = this.holds(triangles[at + 2] ?? 0);
      if (!(ha && hb && hc)) some = true;
      if (ha === hb && hb === hc) continue;
      const [ab, bc, ca] = [triangles[at + 3] ?? 0, triangles[at + 4] ?? 0, triangles[at + 5] ?? 0];
      const [before, after, lone] = hb === hc ? [ca, ab, ha] : hc === ha ? [ab, bc, hb] : [bc, ca, hc];
      // Around a corner that holds the way goes from its second edge to its first, else the other way about.
      if (lone) this.next[after] = before;
      else this.next[before] = after;
    }
    return some;
  }

  /** The mesh's own bound, with the mesh on its left. */
  private bound(): void {
    const { bounds } = this.mesh;
    for (let at = 0; at < bounds.length; at += BOUND) {
      const [from, to, edge] = [bounds[at] ?? 0, bounds[at + 1] ?? 0, bounds[at + 2] ?? 0];
      if (this.holds(from)) this.next[this.edges + from] = this.holds(to) ? this.edges + to : edge;
      else if (this.holds(to)) this.next[edge] = this.edges + to;
    }
  }

  /** Takes a cycle of points out of `next`. */
  private cycle(start: number): number[] {
    const points: number[] = [];
    for (let at = start; at >= 0;) {
      points.push(at);
      const onward = this.next[at] ?? -1;
      this.next[at] = -1;
      at = onward === start ? -1 : onward;
    }
    return points;
  }

  /** Writes a cycle as a ring: corners of the mesh as they are, of the points on the curve as few as will do. */
  private ring(points: readonly number[]): void {
    const rough = points.map((point) => this.rough(point));
    const onCurve = (at: number) => (points[at] ?? 0) < this.edges;
    const kept: number[] = [];
    for (let at = 0; at < points.length; at += 1) {
      const before = kept[kept.length - 1];
      const after = (at + 1) % points.length;
      const skip =
        before !== undefined &&
        after !== 0 &&
        onCurve(before) &&
        onCurve(at) &&
        onCurve(after) &&
        this.nearlyStraight(rough, before, at, after);
      if (!skip) kept.push(at);
    }
    if (kept.length < 2) return;
    const places = kept.map((at): Vec2 =>
      onCurve(at) ? this.place(points[at] ?? 0) : (rough[at] ?? NOWHERE),
    );
    kept.forEach((at, index) => {
      const following = (index + 1) % kept.length;
      const [from, to] = [places[index] ?? NOWHERE, places[following] ?? NOWHERE];
      if (onCurve(at) && onCurve(kept[following] ?? 0)) this.arc(from, to);
      else this.put(from[0], from[1], 0);
    });
  }

  private nearlyStraight(places: readonly Vec2[], before: number, at: number, after: number): boolean {
    const [a, b, c] = [places[before] ?? NOWHERE, places[at] ?? NOWHERE, places[after] ?? NOWHERE];
    const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
    if (Math.hypot(c[0] - a[0], c[1] - a[1]) > LONGEST * this.away(b)) return false;
    return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy)) < BEND_RAD;
  }

  private arc([p0, q0]: Vec2, [p1, q1]: Vec2, depth = 0): void {
    const [dp, dq] = [p1 - p0, q1 - q0];
    const chord = Math.hypot(dp, dq);
    const sagitta = sagittaOf((p, q) => this.ask(p, q), p0, q0, p1, q1);
    const [np, nq] = chord === 0 ? [0, 0] : [dq / chord, -dp / chord];
    if (Math.abs(sagitta) > TIGHT * chord && depth < DEEPEST) {
      const middle: Vec2 = [(p0 + p1) / 2 + sagitta * np, (q0 + q1) / 2 + sagitta * nq];
      this.arc([p0, q0], middle, depth + 1);
      this.arc(middle, [p1, q1], depth + 1);
      return;
    }
    const chords = Math.max(1, Math.min(MOST_CHORDS, Math.ceil(Math.sqrt(Math.abs(sagitta) / SAGITTA))));
    const bulge = (2 * sagitta * chord) / 3 / chords ** 3;
    for (let at = 0; at < chords; at += 1) {
      const share = at / chords;
      const out = 4 * sagitta * share * (1 - share);
      this.put(p0 + share * dp + out * np, q0 + share * dq + out * nq, bulge);
    }
  }

  private put(p: number, q: number, bulge: number): void {
    this.corners.push(p, q);
    this.arcs.push(bulge, 0, 1);
  }

  private ask(p: number, q: number): number {
    this.mesh.conditions(p, q, this.probe, 0);
    return this.probe[this.condition] ?? 0;
  }

  private away([p, q]: Vec2): number {
    let least = Infinity;
    for (const source of this.sources)
      least = Math.min(least, Math.hypot(p - source.p, q - source.q, source.delta));
    return least;
  }

  /** Where a point lies by the straight line through the values at the mesh's corners. */
  private rough(point: number): Vec2 {
    const { p, q, from, to } = this.mesh;
    const corner = point - this.edges;
    if (corner >= 0) return [p[corner] ?? 0, q[corner] ?? 0];
    const [one, two] = [from[point] ?? 0, to[point] ?? 0];
    const [f, g] = [this.mesh.value(one, this.condition), this.mesh.value(two, this.condition)];
    const share = f === g ? 0 : f / (f - g);
    return [
      (p[one] ?? 0) + share * ((p[two] ?? 0) - (p[one] ?? 0)),
      (q[one] ?? 0) + share * ((q[two] ?? 0) - (q[one] ?? 0)),
    ];
  }

  /** Where it lies exactly. */
  private place(point: number): Vec2 {
    const { p, q, from, to } = this.mesh;
    const [one, two] = [from[point] ?? 0, to[point] ?? 0];
    const found = this.curve.crossing(
      this.condition,
      p[one] ?? 0,
      q[one] ?? 0,
      this.mesh.value(one, this.condition),
      p[two] ?? 0,
      q[two] ?? 0,
      this.mesh.value(two, this.condition),
    );
    return [found.p, found.q];
  }
}
