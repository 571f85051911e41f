/**
 * Conditions on a place of a plane: writes one number a condition into `values` from `at` on, each ≥ 0 where it holds and
 * smooth, in any unit.
 */
export type Conditions = (p: number, q: number, values: Float64Array, at: number) => void;

/** Where a condition turns on an edge: the place, and its share of the way along the edge. */
export interface Crossing {
  readonly p: number;
  readonly q: number;
  readonly share: number;
}

/** The curves on which conditions turn, by asking the conditions themselves. */
export class Curve {
  /** All conditions at the place that was asked last. */
  readonly probe: Float64Array;
  private readonly conditions: Conditions;

  constructor(conditions: Conditions, count: number) {
    this.conditions = conditions;
    this.probe = new Float64Array(count);
  }

  /** Where condition i turns between two places, with its values there, of unlike sign; by false position with halved ends. */
  crossing(i: number, p0: number, q0: number, f0: number, p1: number, q1: number, f1: number): Crossing {
    let a = 0;
    let b = 1;
    let fa = f0;
    let fb = f1;
    const [dp, dq] = [p1 - p0, q1 - q0];
    const at = (share: number): Crossing => ({ p: p0 + share * dp, q: q0 + share * dq, share });
    // The end that stays counts half: a false position would else creep up to the crossing from one side.
    let stays = 0;
    for (let step = 0; step < 60 && fa !== fb; step += 1) {
      const t = a + ((b - a) * fa) / (fa - fb);
      const f = this.ask(p0 + t * dp, q0 + t * dq, i);
      if (Math.abs(f) < 1e-8) return at(t);
      if (f >= 0 === fa >= 0) {
        [a, fa] = [t, f];
        if (stays > 0) fb /= 2;
        stays = 1;
      } else {
        [b, fb] = [t, f];
        if (stays < 0) fa /= 2;
        stays = -1;
      }
      if (b - a < 1e-9) break;
    }
    return at(Math.abs(fa) < Math.abs(fb) ? a : b);
  }

  /**
   * The area between the curve of condition i and its chord: ⅔ · sagitta · chord, positive where the part that counts
   * bulges over the chord.
   * @param p, q   a place to one side of the chord, and whether that side counts
   */
  bulge(i: number, one: Crossing, two: Crossing, p: number, q: number, counts: boolean): number {
    const chord = Math.hypot(two.p - one.p, two.q - one.q);
    if (chord < 1e-9) return 0;
    const [mp, mq] = [(one.p + two.p) / 2, (one.q + two.q) / 2];
    // The normal away from the side that counts.
    const [np, nq] = [-(two.q - one.q) / chord, (two.p - one.p) / chord];
    const away = (p - mp) * np + (q - mq) * nq > 0 === counts ? -1 : 1;
    const step = chord * 1e-3 * away;
    const here = this.ask(mp, mq, i);
    const slope = (this.ask(mp + step * np, mq + step * nq, i) - here) / Math.abs(step);
    const sagitta = slope === 0 ? 0 : -here / slope;
    return (2 / 3) * chord * Math.max(-chord / 4, Math.min(chord / 4, sagitta));
  }

  private ask(p: number, q: number, i: number): number {
    this.conditions(p, q, this.probe, 0);
    return this.probe[i] ?? 0;
  }
}
