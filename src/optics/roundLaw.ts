import { lawRad } from './lens.ts';

/** What is left out of the series at most, as a share of its first term. */
const EXACT = 4e-15;
/** Terms are worked out for so many, then for twice that; a law that needs more, near its own end, is left to its formula. */
const FEW = 20;
/** By so much less of the law is taken where it takes more, down to so many rad. */
const [SHRINK, NARROW] = [0.85, 0.01];

/**
 * g(θ; k) / sin θ by the cosine c of the angle from the axis, for c in [`least`, 1]: how much longer the sensor's radius is
 * than that of the unit sphere, without a root, a tangent or an arc for each target. A Chebyshev series cut where its terms
 * are rounding, written as two polynomials in the square of x, c taken to x in [−1, 1]:
 * even(x²) + x · odd(x²). Source: interpolation in Chebyshev points, any text on approximation.
 */
export class RoundLaw {
  /** The least cosine for which the series tells; above 1 where it tells nothing. */
  readonly least: number;
  /** x = c · scale + shift. */
  readonly scale: number;
  readonly shift: number;
  /** Coefficients, the highest power first, of as many terms each. */
  readonly even: Float64Array;
  readonly odd: Float64Array;

  /**
   * @param k           lens law, [−1, 1]
   * @param greatestRad the greatest angle that is asked for; the series may end before it
   */
  constructor(k: number, greatestRad: number) {
    let [low, half, powers] = [1, 0, null as Float64Array | null];
    for (let angle = greatestRad; powers === null && angle > NARROW; angle *= SHRINK) {
      low = Math.cos(angle);
      half = (1 - low) / 2;
      const [from, gain] = [low, half];
      const of = (x: number) => roundOf(from + gain * (x + 1), k);
      powers = series(of, FEW) ?? series(of, 2 * FEW);
    }
    this.least = powers === null ? 2 : low;
    this.scale = 1 / half;
    this.shift = -(1 + low) / (1 - low);
    const terms = powers === null ? 0 : Math.ceil(powers.length / 2);
    this.even = Float64Array.from({ length: terms }, (_, at) => powers?.[2 * (terms - 1 - at)] ?? 0);
    this.odd = Float64Array.from({ length: terms }, (_, at) => powers?.[2 * (terms - 1 - at) + 1] ?? 0);
  }

  /** g / sin θ at a cosine of at least `least`. */
  at(cosine: number): number {
    const { even, odd } = this;
    const x = cosine * this.scale + this.shift;
    const square = x * x;
    let [e, o] = [even[0] ?? 0, odd[0] ?? 0];
    for (let at = 1; at < even.length; at += 1) {
      e = e * square + (even[at] ?? 0);
      o = o * square + (odd[at] ?? 0);
    }
    return e + x * o;
  }
}

/** The formula itself. Near the axis the angle comes from its sine, which the cosine has lost. */
function roundOf(cosine: number, k: number): number {
  const sine = Math.sqrt(Math.max(0, (1 - cosine) * (1 + cosine)));
  const thetaRad = Math.atan2(sine, cosine);
  return thetaRad < 1e-9 ? 1 : lawRad(thetaRad, k) / sine;
}

/** The powers of x of a function's series on [−1, 1], the lowest first; null where its last third is more than rounding. */
function series(of: (x: number) => number, places: number): Float64Array | null {
  // cos(π n (2 i + 1) / 2 places), which repeats.
  const cosines = Float64Array.from({ length: 4 * places }, (_, at) =>
    Math.cos((Math.PI * at) / (2 * places)),
  );
  const values = Float64Array.from({ length: places }, (_, at) => of(cosines[2 * at + 1] ?? 0));
  const terms = new Float64Array(places);
  for (let n = 0; n < places; n += 1) {
    let sum = 0;
    for (let at = 0; at < places; at += 1)
      sum += (values[at] ?? 0) * (cosines[(n * (2 * at + 1)) % (4 * places)] ?? 0);
    terms[n] = ((n === 0 ? 1 : 2) / places) * sum;
  }
  let count = places;
  while (count > 1 && Math.abs(terms[count - 1] ?? 0) < EXACT * Math.abs(terms[0] ?? 0)) count -= 1;
  if (count > (2 * places) / 3 + 1) return null;
  const powers = new Float64Array(count);
  // T_0 = 1, T_1 = x, T_{n+1} = 2x T_n − T_{n−1}.
  let before = new Float64Array(count + 1);
  let now = new Float64Array(count + 1);
  let next = new Float64Array(count + 1);
  now[0] = 1;
  for (let n = 0; n < count; n += 1) {
    const term = terms[n] ?? 0;
    for (let power = 0; power <= n; power += 1)
      powers[power] = (powers[power] ?? 0) + term * (now[power] ?? 0);
    next[0] = n === 0 ? 0 : -(before[0] ?? 0);
    for (let power = 1; power <= n + 1; power += 1)
      next[power] = (n === 0 ? 1 : 2) * (now[power - 1] ?? 0) - (n === 0 ? 0 : (before[power] ?? 0));
    [before, now, next] = [now, next, before];
  }
  return powers;
}
