/** Most corners that a triangle can have after so many cuts. */
const MOST_CORNERS = 40;

/** The share of a triangle in which several linear functions are all ≥ 0; keeps its buffers from one triangle to the next. */
export class ShareAbove {
  private from = new Float64Array(MOST_CORNERS * 2);
  private to = new Float64Array(MOST_CORNERS * 2);
  private corners = 0;

  /** Begins with the whole triangle, in its own coordinates s, t ≥ 0, s + t ≤ 1. */
  begin(): void {
    this.from.set([0, 0, 1, 0, 0, 1]);
    this.corners = 3;
  }

  /** Keeps the part in which a function with these values at the triangle's corners is ≥ 0. */
  cut(first: number, second: number, third: number): void {
    const { from, to, corners } = this;
    let kept = 0;
    for (let at = 0; at < corners; at += 1) {
      const next = (at + 1) % corners;
      const [s0, t0] = [from[at * 2] ?? 0, from[at * 2 + 1] ?? 0];
      const [s1, t1] = [from[next * 2] ?? 0, from[next * 2 + 1] ?? 0];
      const f = first * (1 - s0 - t0) + second * s0 + third * t0;
      const g = first * (1 - s1 - t1) + second * s1 + third * t1;
      if (f >= 0) {
        to[kept * 2] = s0;
        to[kept * 2 + 1] = t0;
        kept += 1;
      }
      if (f >= 0 === g >= 0) continue;
      const share = f / (f - g);
      to[kept * 2] = s0 + share * (s1 - s0);
      to[kept * 2 + 1] = t0 + share * (t1 - t0);
      kept += 1;
    }
    this.from = to;
    this.to = from;
    this.corners = kept;
  }

  /** The share of the triangle that is left. */
  get share(): number {
    let twice = 0;
    for (let at = 0; at < this.corners; at += 1) {
      const next = (at + 1) % this.corners;
      twice +=
        (this.from[at * 2] ?? 0) * (this.from[next * 2 + 1] ?? 0) -
        (this.from[next * 2] ?? 0) * (this.from[at * 2 + 1] ?? 0);
    }
    return Math.abs(twice);
  }
}
