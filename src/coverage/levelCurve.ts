import type { Vec2 } from '../base/vector.ts';
import type { ArcRings } from '../sight/arcRings.ts';
import { Curve, type Conditions } from './curve.ts';
import type { FieldMesh } from './fieldMesh.ts';
import { sagittaOf } from './sagitta.ts';

/** Chords of one arc are no longer than this share of their distance from the lens. */
const LONGEST = 0.13;
/** Nor does the curve turn more than this from one chord to the next, rad. */
const BEND_RAD = 0.35;
/** Arcs are laid out in chords of no more sagitta than this, m. */
const SAGITTA = 1e-3;
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
  private readonly conditions: Conditions;
  private readonly curve: Curve;
  private readonly delta: number;
  /** The point that follows each: 3 an edge of the mesh by corner (outwards, around, across), then 1 a corner. */
  private readonly next: Int32Array;
  private readonly probe: Float64Array;
  private condition = 0;
  private corners: number[] = [];
  private arcs: number[] = [];

  constructor(mesh: FieldMesh, conditions: Conditions, delta: number) {
    this.mesh = mesh;
    this.conditions = conditions;
    this.delta = delta;
    this.curve = new Curve(conditions, mesh.count);
    this.next = new Int32Array(mesh.p.length * 4);
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
    return (this.mesh.values[corner * this.mesh.count + this.condition] ?? 0) >= 0;
  }

  /** Goes through all triangles; false where the condition holds at all corners. */
  private march(): boolean {
    const { circles, spokes, around } = this.mesh;
    let some = false;
    for (let circle = 0; circle + 1 < circles; circle += 1)
      for (let spoke = 0; spoke < (around ? spokes : spokes - 1); spoke += 1) {
        const a = circle * spokes + spoke;
        const b = circle * spokes + ((spoke + 1) % spokes);
        const [c, d] = [b + spokes, a + spokes];
        const [ha, hb, hc, hd] = [this.holds(a), this.holds(b), this.holds(c), this.holds(d)];
        if (!(ha && hb && hc && hd)) some = true;
        if (ha === hb && hb === hc && hc === hd) continue;
        this.triangle(ha, hd, hc, a * 3, d * 3 + 1, a * 3 + 2);
        this.triangle(ha, hc, hb, a * 3 + 2, b * 3, a * 3 + 1);
      }
    return some;
  }

  /** A triangle's corners counter-clockwise, and its edges from each to the next. */
  private triangle(h0: boolean, h1: boolean, h2: boolean, e01: number, e12: number, e20: number): void {
    if (h0 === h1 && h1 === h2) return;
    const [before, after, lone] = h1 === h2 ? [e20, e01, h0] : h2 === h0 ? [e01, e12, h1] : [e12, e20, h2];
    // Around a corner that holds the way goes from its second edge to its first, else the other way about.
    if (lone) this.next[after] = before;
    else this.next[before] = after;
  }

  /** The mesh's own bound, with the mesh on its left. */
  private bound(): void {
    const { circles, spokes, around } = this.mesh;
    const last = (circles - 1) * spokes;
    for (let spoke = 0; spoke < (around ? spokes : spokes - 1); spoke += 1) {
      this.side(last + spoke, last + ((spoke + 1) % spokes), (last + spoke) * 3 + 1);
      this.side((spoke + 1) % spokes, spoke, spoke * 3 + 1);
    }
    if (around) return;
    for (let circle = 0; circle + 1 < circles; circle += 1) {
      const [inner, outer] = [circle * spokes, (circle + 1) * spokes];
      this.side(inner, outer, inner * 3);
      this.side(outer + spokes - 1, inner + spokes - 1, (inner + spokes - 1) * 3);
    }
  }

  private side(from: number, to: number, edge: number): void {
    const corners = this.mesh.p.length * 3;
    if (this.holds(from)) this.next[corners + from] = this.holds(to) ? corners + to : edge;
    else if (this.holds(to)) this.next[edge] = corners + to;
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
    const onCurve = (at: number) => (points[at] ?? 0) < this.mesh.p.length * 3;
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
    const away = Math.hypot(b[0], b[1], this.delta);
    if (Math.hypot(c[0] - a[0], c[1] - a[1]) > LONGEST * away) return false;
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
    this.conditions(p, q, this.probe, 0);
    return this.probe[this.condition] ?? 0;
  }

  /** The two corners of the mesh between which a point of the curve lies. */
  private ends(point: number): readonly [number, number] {
    const { spokes } = this.mesh;
    const from = Math.floor(point / 3);
    const spoke = from % spokes;
    const beside = from - spoke + ((spoke + 1) % spokes);
    const kind = point % 3;
    return [from, kind === 0 ? from + spokes : kind === 1 ? beside : beside + spokes];
  }

  /** Where a point lies by the straight line through the values at the mesh's corners. */
  private rough(point: number): Vec2 {
    const { p, q, values, count } = this.mesh;
    const corner = point - p.length * 3;
    if (corner >= 0) return [p[corner] ?? 0, q[corner] ?? 0];
    const [from, to] = this.ends(point);
    const [f, g] = [values[from * count + this.condition] ?? 0, values[to * count + this.condition] ?? 0];
    const share = f === g ? 0 : f / (f - g);
    return [
      (p[from] ?? 0) + share * ((p[to] ?? 0) - (p[from] ?? 0)),
      (q[from] ?? 0) + share * ((q[to] ?? 0) - (q[from] ?? 0)),
    ];
  }

  /** Where it lies exactly. */
  private place(point: number): Vec2 {
    const { p, q, values, count } = this.mesh;
    const [from, to] = this.ends(point);
    const value = (corner: number) => values[corner * count + this.condition] ?? 0;
    const found = this.curve.crossing(
      this.condition,
      p[from] ?? 0,
      q[from] ?? 0,
      value(from),
      p[to] ?? 0,
      q[to] ?? 0,
      value(to),
    );
    return [found.p, found.q];
  }
}
