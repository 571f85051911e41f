/**
 * Conditions on a place of a plane: fills `values` with one number a condition, all ≥ 0 where the place counts. Each is
 * smooth, in any unit.
 */
export type Conditions = (p: number, q: number, values: Float64Array) => void;

export interface FoundArea {
  readonly value: number;
  /** What the value may be off by, from the parts that a curve cuts. */
  readonly bound: number;
}

/** Pieces that a curve cuts are made no longer than this share of their distance from the lens. */
const FINE = 0.06;
/** Pieces are made no longer than this share before their corners are trusted to tell. */
const COARSE = 0.25;
/** Where two curves meet in a piece it is halved down to this share. */
const FINEST = 0.004;
/** A piece whose curve takes more than this share of its chord squared is halved again. */
const BENT = 0.03;
/** The greatest share of a piece's curved correction that was seen to be wrong, with room: see tests/coverage. */
const CORRECTION_SLACK = 0.25;

/**
 * The area of the part of some triangles in which all conditions hold. Triangles are halved along their longest edge until
 * a curve cuts them simply; there it is followed by its chord and the sagitta at the chord's middle, which leaves an
 * error of fourth order.
 * @param triangles six numbers a triangle, relative to the foot of the lens, m
 * @param delta     distance from lens to plane, m: with the distance over the plane it sets how fine pieces are made
 */
export function areaWhere(triangles: Float64Array, conditions: Conditions, count: number, delta: number): FoundArea {
  const walk = new Walk(conditions, count, delta * delta);
  for (let at = 0; at < triangles.length; at += 6) {
    const n = (k: number) => triangles[at + k] ?? 0;
    const corners = [n(0), n(1), n(2), n(3), n(4), n(5)] as const;
    walk.visit(corners, [walk.at(n(0), n(1)), walk.at(n(2), n(3)), walk.at(n(4), n(5))], 0);
  }
  return { value: Math.max(0, walk.area), bound: walk.slack };
}

type Corners = readonly [number, number, number, number, number, number];
type Values = readonly [Float64Array, Float64Array, Float64Array];

class Walk {
  area = 0;
  slack = 0;
  private readonly conditions: Conditions;
  private readonly count: number;
  private readonly delta2: number;
  private readonly probe: Float64Array;

  constructor(conditions: Conditions, count: number, delta2: number) {
    this.conditions = conditions;
    this.count = count;
    this.delta2 = delta2;
    this.probe = new Float64Array(count);
  }

  at(p: number, q: number): Float64Array {
    const values = new Float64Array(this.count);
    this.conditions(p, q, values);
    return values;
  }

  visit(c: Corners, v: Values, depth: number): void {
    const size = Math.abs(areaOf(c));
    if (size === 0) return;
    const edge = longest(c);
    const share = edge.length / Math.sqrt(this.nearest2(c));
    if (share > COARSE && depth < 60) {
      this.halve(c, v, edge.from, depth);
      return;
    }
    let cut = -1;
    let cuts = 0;
    let close = false;
    for (let i = 0; i < this.count; i += 1) {
      const [a, b, d] = [v[0][i] ?? 0, v[1][i] ?? 0, v[2][i] ?? 0];
      const least = Math.min(a, b, d);
      const most = Math.max(a, b, d);
      if (least < 0 && most < 0 && -most > 2 * (most - least)) return;
      if (least < 0 && most >= 0) {
        cut = i;
        cuts += 1;
      } else if (Math.min(Math.abs(least), Math.abs(most)) <= 2 * (most - least)) close = true;
    }
    const fine = cuts > 1 ? FINEST : cuts === 1 ? FINE : close ? FINE : COARSE;
    if (share > fine && depth < 60) this.halve(c, v, edge.from, depth);
    else if (cuts === 0) {
      if (allHold(v, this.count)) this.area += size;
    } else if (cuts === 1) {
      if (othersHold(v, this.count, cut) && !this.curved(c, v, cut, share <= FINEST)) this.halve(c, v, edge.from, depth);
    } else this.straight(c, v);
  }

  private halve(c: Corners, v: Values, from: 0 | 1 | 2, depth: number): void {
    const to = ((from + 1) % 3) as 0 | 1 | 2;
    const third = ((from + 2) % 3) as 0 | 1 | 2;
    const [p, q] = [(x(c, from) + x(c, to)) / 2, (y(c, from) + y(c, to)) / 2];
    const middle = this.at(p, q);
    this.visit([x(c, from), y(c, from), p, q, x(c, third), y(c, third)], [v[from], middle, v[third]], depth + 1);
    this.visit([p, q, x(c, to), y(c, to), x(c, third), y(c, third)], [middle, v[to], v[third]], depth + 1);
  }

  /**
   * One curve cuts the piece: chord between its two crossings, and the parabola through its middle.
   * @returns false where it bends too much for that and the piece may be halved
   */
  private curved(c: Corners, v: Values, i: number, last: boolean): boolean {
    const positive = [0, 1, 2].filter((k) => (v[k as 0 | 1 | 2][i] ?? 0) >= 0);
    const lone = (positive.length === 1 ? positive[0] : [0, 1, 2].find((k) => !positive.includes(k))) as 0 | 1 | 2;
    const one = this.crossing(c, v, i, lone, ((lone + 1) % 3) as 0 | 1 | 2);
    const two = this.crossing(c, v, i, lone, ((lone + 2) % 3) as 0 | 1 | 2);
    const corner = Math.abs(
      (one[0] - x(c, lone)) * (two[1] - y(c, lone)) - (two[0] - x(c, lone)) * (one[1] - y(c, lone)),
    ) / 2;
    const whole = Math.abs(areaOf(c));
    const base = positive.length === 1 ? corner : whole - corner;
    const bulge = this.bulge(one, two, i, positive.length === 1 ? [x(c, lone), y(c, lone)] : null, c, lone);
    const chord2 = (one[0] - two[0]) ** 2 + (one[1] - two[1]) ** 2;
    if (!last && Math.abs(bulge) > BENT * chord2) return false;
    // A bulge may reach over the piece's edge: the neighbour, whose corners do not tell of it, leaves it to this one.
    this.area += base + bulge;
    this.slack += Math.abs(bulge) * CORRECTION_SLACK;
    return true;
  }

  /** Where a condition turns on the edge between two corners, by the false position method on the true function. */
  private crossing(c: Corners, v: Values, i: number, from: 0 | 1 | 2, to: 0 | 1 | 2): readonly [number, number] {
    let [a, b] = [0, 1];
    let [fa, fb] = [v[from][i] ?? 0, v[to][i] ?? 0];
    const [x0, y0, dx, dy] = [x(c, from), y(c, from), x(c, to) - x(c, from), y(c, to) - y(c, from)];
    for (let step = 0; step < 40 && Math.abs(fb - fa) > 0; step += 1) {
      const t = step % 3 === 2 ? (a + b) / 2 : a + ((b - a) * fa) / (fa - fb);
      this.conditions(x0 + t * dx, y0 + t * dy, this.probe);
      const f = this.probe[i] ?? 0;
      if (f >= 0 === fa >= 0) [a, fa] = [t, f];
      else [b, fb] = [t, f];
      if (Math.abs(b - a) < 1e-10 || f === 0) break;
    }
    const t = Math.abs(fa) < Math.abs(fb) ? a : b;
    return [x0 + t * dx, y0 + t * dy];
  }

  /** ⅔ · sagitta · chord, positive where the part that counts bulges over the chord. */
  private bulge(
    one: readonly [number, number],
    two: readonly [number, number],
    i: number,
    inside: readonly [number, number] | null,
    c: Corners,
    lone: 0 | 1 | 2,
  ): number {
    const [cx, cy] = [two[0] - one[0], two[1] - one[1]];
    const chord = Math.hypot(cx, cy);
    if (chord < 1e-9) return 0;
    const [mx, my] = [(one[0] + two[0]) / 2, (one[1] + two[1]) / 2];
    let [nx, ny] = [-cy / chord, cx / chord];
    // Outwards: away from the side that counts.
    const [sx, sy] = inside ?? [x(c, lone), y(c, lone)];
    const towardsLone = (sx - mx) * nx + (sy - my) * ny > 0;
    if (towardsLone === (inside !== null)) [nx, ny] = [-nx, -ny];
    const h = chord * 1e-3;
    this.conditions(mx, my, this.probe);
    const here = this.probe[i] ?? 0;
    this.conditions(mx + h * nx, my + h * ny, this.probe);
    const slope = ((this.probe[i] ?? 0) - here) / h;
    const sagitta = slope === 0 ? 0 : -here / slope;
    return (2 / 3) * chord * Math.max(-chord / 4, Math.min(chord / 4, sagitta));
  }

  /** Several curves meet in a piece this small: each is a straight line through the values at the corners. */
  private straight(c: Corners, v: Values): void {
    let ring = [0, 1, 2].map((k) => ({ s: k === 1 ? 1 : 0, t: k === 2 ? 1 : 0 }));
    for (let i = 0; i < this.count; i += 1) {
      const value = ({ s, t }: { s: number; t: number }) =>
        (v[0][i] ?? 0) * (1 - s - t) + (v[1][i] ?? 0) * s + (v[2][i] ?? 0) * t;
      ring = ring.flatMap((from, at) => {
        const to = ring[(at + 1) % ring.length] ?? from;
        const [f, g] = [value(from), value(to)];
        const kept = f >= 0 ? [from] : [];
        const share = f / (f - g);
        return f >= 0 === g >= 0
          ? kept
          : [...kept, { s: from.s + share * (to.s - from.s), t: from.t + share * (to.t - from.t) }];
      });
    }
    let twice = 0;
    ring.forEach((from, at) => {
      const to = ring[(at + 1) % ring.length] ?? from;
      twice += from.s * to.t - to.s * from.t;
    });
    const whole = Math.abs(areaOf(c));
    this.area += Math.abs(twice) * whole;
    this.slack += whole / 4;
  }

  private nearest2(c: Corners): number {
    return this.delta2 + Math.min(x(c, 0) ** 2 + y(c, 0) ** 2, x(c, 1) ** 2 + y(c, 1) ** 2, x(c, 2) ** 2 + y(c, 2) ** 2);
  }
}

const x = (c: Corners, k: 0 | 1 | 2): number => (k === 0 ? c[0] : k === 1 ? c[2] : c[4]);
const y = (c: Corners, k: 0 | 1 | 2): number => (k === 0 ? c[1] : k === 1 ? c[3] : c[5]);

const areaOf = (c: Corners): number => ((c[2] - c[0]) * (c[5] - c[1]) - (c[4] - c[0]) * (c[3] - c[1])) / 2;

function longest(c: Corners): { readonly from: 0 | 1 | 2; readonly length: number } {
  const ab = Math.hypot(c[2] - c[0], c[3] - c[1]);
  const bc = Math.hypot(c[4] - c[2], c[5] - c[3]);
  const ca = Math.hypot(c[0] - c[4], c[1] - c[5]);
  if (ab >= bc && ab >= ca) return { from: 0, length: ab };
  return bc >= ca ? { from: 1, length: bc } : { from: 2, length: ca };
}

const allHold = (v: Values, count: number): boolean => othersHold(v, count, -1);

function othersHold(v: Values, count: number, but: number): boolean {
  for (let i = 0; i < count; i += 1) if (i !== but && (v[0][i] ?? 0) < 0) return false;
  return true;
}
