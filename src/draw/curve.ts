import type { Vec2 } from '../base/vector.ts';

/** A number at each place of a plane; null where there is none. */
export type Field = (a: number, b: number) => number | null;

const MOST_HALVINGS = 7;

/**
 * Moves a point along a direction until the field has the wanted value there, to 1e-7 of it (secant steps). Stays where it
 * was if that leads nowhere.
 */
export function settleOn(start: Vec2, direction: Vec2, field: Field, wanted: number): Vec2 {
  const size = Math.hypot(direction[0], direction[1]);
  if (!(size > 0)) return start;
  const [ux, uy] = [direction[0] / size, direction[1] / size];
  const at = (t: number): number | null => field(start[0] + ux * t, start[1] + uy * t);
  let [t0, f0] = [0, at(0)];
  let t1 = Math.min(1e-3, size / 8);
  for (let step = 0; step < 12 && f0 !== null; step += 1) {
    if (Math.abs(f0 - wanted) <= wanted * 1e-7) return [start[0] + ux * t0, start[1] + uy * t0];
    const f1 = at(t1);
    if (f1 === null || f1 === f0) return start;
    const next = t1 + ((wanted - f1) * (t1 - t0)) / (f1 - f0);
    [t0, f0, t1] = [t1, f1, next];
    if (Math.abs(t1) > 2 * size + 0.5) return start;
  }
  return start;
}

/**
 * The place between two points where the field has the wanted value, to 1e-7 of it.
 * @param over how far the field exceeds the wanted value at `from`
 * @param past the same at `to`; of the other sign
 * Bracketed secant (Illinois) steps: an end that stays twice running counts half.
 */
export function crossingOf(
  from: Vec2,
  to: Vec2,
  over: number,
  past: number,
  field: Field,
  wanted: number,
): Vec2 {
  const at = (t: number): Vec2 => [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
  let [low, high, f, g] = [0, 1, over, past];
  let stayed = 0;
  for (let step = 0; step < 40; step += 1) {
    const t = (low * g - high * f) / (g - f);
    const point = at(t);
    const value = field(point[0], point[1]);
    if (value === null) return at((low + high) / 2);
    const off = value - wanted;
    if (Math.abs(off) <= wanted * 1e-7) return point;
    if (off > 0 === f > 0) {
      [low, f] = [t, off];
      if (stayed === 1) g /= 2;
      stayed = 1;
    } else {
      [high, g] = [t, off];
      if (stayed === -1) f /= 2;
      stayed = -1;
    }
  }
  return at((low + high) / 2);
}

/** Halves the chords of a line on a curve until none lies farther than `sagitta` from it. */
export function refineCurve(line: readonly Vec2[], field: Field, wanted: number, sagitta: number): Vec2[] {
  const first = line[0];
  if (!first) return [];
  const out: Vec2[] = [first];
  const between = (a: Vec2, b: Vec2, depth: number): void => {
    const chord: Vec2 = [b[0] - a[0], b[1] - a[1]];
    const middle: Vec2 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const on = settleOn(middle, [-chord[1], chord[0]], field, wanted);
    const off = Math.hypot(on[0] - middle[0], on[1] - middle[1]);
    if (off <= sagitta || depth >= MOST_HALVINGS) {
      // A curve's half chord has a quarter of its sagitta: where that is enough, the middle alone serves.
      if (off > 0) out.push(on);
      return;
    }
    between(a, on, depth + 1);
    out.push(on);
    between(on, b, depth + 1);
  };
  line.forEach((point, i) => {
    const before = line[i - 1];
    if (!before) return;
    between(before, point, 0);
    out.push(point);
  });
  return out;
}
