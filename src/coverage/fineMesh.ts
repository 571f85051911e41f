import { TRIANGLE, type FieldMesh } from './fieldMesh.ts';
import type { LensOver } from './nearestLens.ts';
import { ACROSS, AROUND, edgeOf, OUTWARDS, type PolarMesh } from './polarMesh.ts';

/** Edges are made no longer than this share of their distance from a place from which curves come. */
const SHARE = 0.35;
/** How near such a place this goes on, as a share of its own distance. */
const FLOOR = 0.1;
const MOST_ROUNDS = 40;

/** Makes a mesh finer where a curve runs between its corners unseen, and around places from which curves come. */
export function refine(polar: PolarMesh, sources: readonly LensOver[]): FieldMesh {
  const { mesh } = polar;
  const search = new Search(polar);
  const [islands, narrows] = [search.islands(), search.narrows()];
  mesh.fill(islands);
  mesh.split(narrows);
  // The lens's own foot is the middle of the mesh.
  for (const source of sources) if (Math.hypot(source.p, source.q) > 1e-9) around(mesh, source);
  return mesh;
}

function around(mesh: FieldMesh, { p, q, delta }: LensOver): void {
  const floor2 = (delta * FLOOR) ** 2;
  const away2 = (corner: number) => ((mesh.p[corner] ?? 0) - p) ** 2 + ((mesh.q[corner] ?? 0) - q) ** 2;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const marks = new Map<number, number>();
    for (let at = 0; at < mesh.triangles.length; at += TRIANGLE) {
      const [a, b, c] = [mesh.triangles[at] ?? 0, mesh.triangles[at + 1] ?? 0, mesh.triangles[at + 2] ?? 0];
      const [ab, bc, ca] = [size2(mesh, a, b), size2(mesh, b, c), size2(mesh, c, a)];
      const longest = Math.max(ab, bc, ca);
      const near = Math.min(away2(a), away2(b), away2(c));
      if (longest <= SHARE * SHARE * (near + floor2)) continue;
      const edge = mesh.triangles[at + (longest === ab ? 3 : longest === bc ? 4 : 5)] ?? 0;
      if (marks.has(edge)) continue;
      const [one, two] = [mesh.from[edge] ?? 0, mesh.to[edge] ?? 0];
      const middle = (of: Float64Array) => ((of[one] ?? 0) + (of[two] ?? 0)) / 2;
      marks.set(edge, mesh.addCorner(middle(mesh.p), middle(mesh.q)));
    }
    if (marks.size === 0) return;
    mesh.split(marks);
  }
}

const size2 = ({ p, q }: FieldMesh, from: number, to: number): number =>
  ((p[to] ?? 0) - (p[from] ?? 0)) ** 2 + ((q[to] ?? 0) - (q[from] ?? 0)) ** 2;

/** A corner and those around it. */
interface Around {
  readonly here: number;
  readonly inner: number;
  readonly outer: number;
  readonly right: number;
  readonly left: number;
}

/** Looks for places between the corners of a fresh mesh at which a condition turns though it does not at the corners. */
class Search {
  private readonly polar: PolarMesh;
  private readonly mesh: FieldMesh;
  private readonly probe: Float64Array;

  constructor(polar: PolarMesh) {
    this.polar = polar;
    this.mesh = polar.mesh;
    this.probe = new Float64Array(polar.mesh.count);
  }

  /** Edges that a curve crosses twice, and a corner between the two crossings. */
  narrows(): Map<number, number> {
    const marks = new Map<number, number>();
    const { circles, spokes, around } = this.polar;
    const slots = around ? spokes : spokes - 1;
    const kinds = [
      [1, 0, OUTWARDS],
      [0, 1, AROUND],
      [1, 1, ACROSS],
    ] as const;
    for (let circle = 0; circle < circles; circle += 1)
      for (let spoke = 0; spoke < spokes; spoke += 1)
        for (const [out, turn, kind] of kinds) {
          if (circle + out >= circles || (turn > 0 && spoke >= slots)) continue;
          this.along(circle, spoke, out, turn, edgeOf(circle * spokes + spoke, kind), marks);
        }
    return marks;
  }

  /** Triangles that hold an island of a condition about their middle, by place in the list, and a corner on it. */
  islands(): Map<number, number> {
    const middles = new Map<number, number>();
    const { circles, spokes } = this.polar;
    const { count } = this.mesh;
    for (let circle = 1; circle + 1 < circles; circle += 1)
      for (let spoke = 0; spoke < spokes; spoke += 1) {
        const around: Around = {
          here: this.corner(circle, spoke),
          inner: this.corner(circle - 1, spoke),
          outer: this.corner(circle + 1, spoke),
          right: this.corner(circle, spoke - 1),
          left: this.corner(circle, spoke + 1),
        };
        if (around.right < 0 || around.left < 0) continue;
        for (let condition = 0; condition < count; condition += 1)
          if (this.isNearest(around, condition)) this.island(circle, spoke, around, condition, middles);
      }
    return middles;
  }

  /** The number of a corner; −1 off the mesh. */
  private corner(circle: number, spoke: number): number {
    const { circles, spokes, around } = this.polar;
    if (circle < 0 || circle >= circles || (!around && (spoke < 0 || spoke >= spokes))) return -1;
    return circle * spokes + ((spoke + spokes) % spokes);
  }

  private along(
    circle: number,
    spoke: number,
    out: number,
    turn: number,
    edge: number,
    marks: Map<number, number>,
  ): void {
    const { values, count } = this.mesh;
    const a = this.corner(circle - out, spoke - turn) * count;
    const b = this.corner(circle, spoke) * count;
    const c = this.corner(circle + out, spoke + turn) * count;
    const d = this.corner(circle + 2 * out, spoke + 2 * turn) * count;
    for (let condition = 0; condition < count; condition += 1) {
      const f = values[b + condition] ?? 0;
      const g = values[c + condition] ?? 0;
      if (f >= 0 !== g >= 0) continue;
      const sense = f >= 0 ? 1 : -1;
      const chord = sense * (g - f);
      // Slopes at both ends by the corners beyond; off the mesh as a parabola would have it.
      const before = (sense * (g - (values[a + condition] ?? 0))) / 2;
      const after = (sense * ((values[d + condition] ?? 0) - f)) / 2;
      const start = a >= 0 ? before : d >= 0 ? 2 * chord - after : chord;
      const end = d >= 0 ? after : 2 * chord - start;
      if (start >= 0 || end <= 0) continue;
      // Where the tangents at both ends meet: a curve that bends one way stays above that.
      const share = (chord - end) / (start - end);
      if (!(share > 0.02 && share < 0.98) || sense * f + start * share >= 0) continue;
      if (this.turns(edge, share, condition, sense, marks)) return;
    }
  }

  private turns(
    edge: number,
    share: number,
    condition: number,
    sense: number,
    marks: Map<number, number>,
  ): boolean {
    const { mesh, probe } = this;
    const [b, c] = [mesh.from[edge] ?? 0, mesh.to[edge] ?? 0];
    const at = (t: number): readonly [number, number] => [
      (mesh.p[b] ?? 0) + t * ((mesh.p[c] ?? 0) - (mesh.p[b] ?? 0)),
      (mesh.q[b] ?? 0) + t * ((mesh.q[c] ?? 0) - (mesh.q[b] ?? 0)),
    ];
    const value = (t: number): number => {
      mesh.conditions(...at(t), probe, 0);
      return sense * (probe[condition] ?? 0);
    };
    const [f, g] = [sense * mesh.value(b, condition), sense * mesh.value(c, condition)];
    let t = share;
    for (let step = 0; step < 3; step += 1) {
      const here = value(t);
      if (here < 0 || (sense < 0 && here === 0)) {
        marks.set(edge, mesh.addCorner(...at(t)));
        return true;
      }
      // The lowest point of the parabola through the ends and this place.
      const bend = (g - f - (here - f) / t) / (1 - t);
      const onward = (bend - (g - f)) / (2 * bend);
      if (!(bend > 0 && onward > 0.02 && onward < 0.98) || Math.abs(onward - t) < 1e-3) return false;
      t = onward;
    }
    return false;
  }

  /** Whether a condition comes nearest to turning at a corner, of all four around it. */
  private isNearest({ here, inner, outer, right, left }: Around, condition: number): boolean {
    const { values, count } = this.mesh;
    const f = values[here * count + condition] ?? 0;
    const a = values[inner * count + condition] ?? 0;
    const b = values[outer * count + condition] ?? 0;
    const c = values[right * count + condition] ?? 0;
    const d = values[left * count + condition] ?? 0;
    return f >= 0 ? a >= f && b >= f && c >= f && d >= f : a <= f && b <= f && c <= f && d <= f;
  }

  private island(
    circle: number,
    spoke: number,
    { here, inner, outer, right, left }: Around,
    condition: number,
    middles: Map<number, number>,
  ): void {
    const { mesh } = this;
    const f = mesh.value(here, condition);
    const sense = f >= 0 ? 1 : -1;
    const g = sense * f;
    const [a, b] = [sense * mesh.value(inner, condition), sense * mesh.value(outer, condition)];
    const [c, d] = [sense * mesh.value(right, condition), sense * mesh.value(left, condition)];
    const [bendOut, bendAround] = [a + b - 2 * g, c + d - 2 * g];
    const [slopeOut, slopeAround] = [(b - a) / 2, (d - c) / 2];
    if (!(bendOut > 0 && bendAround > 0)) return;
    if (g - slopeOut ** 2 / (2 * bendOut) - slopeAround ** 2 / (2 * bendAround) >= 0) return;
    const [out, turn] = [-slopeOut / bendOut, -slopeAround / bendAround];
    const [towards, beside] = [out >= 0 ? outer : inner, turn >= 0 ? left : right];
    const place = (of: Float64Array) =>
      (of[here] ?? 0) +
      Math.abs(out) * ((of[towards] ?? 0) - (of[here] ?? 0)) +
      Math.abs(turn) * ((of[beside] ?? 0) - (of[here] ?? 0));
    const [p, q] = [place(mesh.p), place(mesh.q)];
    mesh.conditions(p, q, this.probe, 0);
    const found = sense * (this.probe[condition] ?? 0);
    if (found > 0 || (found === 0 && sense > 0)) return;
    const triangle = this.triangleAt(circle - (out >= 0 ? 0 : 1), spoke - (turn >= 0 ? 0 : 1), p, q);
    if (triangle >= 0 && !middles.has(triangle)) middles.set(triangle, mesh.addCorner(p, q));
  }

  /** The triangle of a square that holds a place, by place in the list; −1 where neither does. */
  private triangleAt(circle: number, spoke: number, p: number, q: number): number {
    const { spokes, around } = this.polar;
    const slots = around ? spokes : spokes - 1;
    const first = (circle * slots + ((spoke + slots) % slots)) * 2;
    for (const triangle of [first, first + 1]) {
      const corners = this.mesh.triangles.slice(triangle * TRIANGLE, triangle * TRIANGLE + 3);
      const within = corners.every((from, at) => {
        const to = corners[(at + 1) % 3] ?? from;
        const [p0, q0] = [this.mesh.p[from] ?? 0, this.mesh.q[from] ?? 0];
        return ((this.mesh.p[to] ?? 0) - p0) * (q - q0) - ((this.mesh.q[to] ?? 0) - q0) * (p - p0) > 0;
      });
      if (within) return triangle;
    }
    return -1;
  }
}
