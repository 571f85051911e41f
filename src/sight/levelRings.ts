import { ARC, type ArcRings } from './arcRings.ts';
import { Crossings } from './crossings.ts';

/** The part that at least `level` of some regions cover, as rings: 1 for what any covers, their number for what all do. */
export function levelRings(regions: readonly ArcRings[], level: number): ArcRings {
  return new Tracing(new Crossings(regions), level - 1).run();
}

/**
 * Follows stretches beside which just so many other regions lie. At each crossing the outline goes over to the other edge.
 */
class Tracing {
  private readonly crossings: Crossings;
  private readonly cover: number;
  /** Stretches that count: edge, share at which each begins and ends, and the stretch that follows. */
  private readonly edge: number[] = [];
  private readonly from: number[] = [];
  private readonly till: number[] = [];
  private readonly onward: number[] = [];
  /** By event: the stretch that begins at it. */
  private readonly begins: Int32Array;
  /** Stretches that end at an event, and the events. */
  private readonly ends: { readonly stretch: number; readonly event: number }[] = [];

  constructor(crossings: Crossings, cover: number) {
    this.crossings = crossings;
    this.cover = cover;
    this.begins = new Int32Array(crossings.turn.length).fill(-1);
  }

  run(): ArcRings {
    this.collect();
    this.link();
    return this.rings();
  }

  private collect(): void {
    const { starts, covers, first, share, turn } = this.crossings;
    for (let ring = 0; ring + 1 < starts.length; ring += 1) {
      let cover = covers[ring] ?? 0;
      const end = starts[ring + 1] ?? 0;
      // A stretch goes on over corners: the first of a ring takes up the last.
      const opening = this.edge.length;
      const openAtStart = cover === this.cover;
      let open = -1;
      for (let edge = starts[ring] ?? 0; edge < end; edge += 1) {
        if (cover === this.cover) open = this.put(edge, 0, open);
        const last = first[edge + 1] ?? 0;
        for (let event = first[edge] ?? 0; event < last; event += 1) {
          const at = share[event] ?? 0;
          if (open >= 0) {
            this.till[open] = at;
            this.ends.push({ stretch: open, event });
            open = -1;
          }
          cover += turn[event] ?? 0;
          if (cover !== this.cover) continue;
          open = this.put(edge, at, -1);
          this.begins[event] = open;
        }
      }
      if (openAtStart && open >= 0) this.onward[open] = opening;
    }
  }

  private put(edge: number, from: number, before: number): number {
    const stretch = this.edge.length;
    this.edge.push(edge);
    this.from.push(from);
    this.till.push(1);
    this.onward.push(-1);
    if (before >= 0) this.onward[before] = stretch;
    return stretch;
  }

  /**
   * Joins ends to beginnings at their crossings. Where several edges cross at one place within rounding, the two may
   * disagree on their order; what is left over there is joined to the nearest.
   */
  private link(): void {
    const { begins, onward } = this;
    const loose: number[] = [];
    for (const { stretch, event } of this.ends) {
      const twin = this.crossings.twin[event] ?? 0;
      const next = begins[twin] ?? -1;
      if (next < 0) loose.push(stretch);
      else {
        onward[stretch] = next;
        begins[twin] = -1;
      }
    }
    if (loose.length === 0) return;
    const free = [...begins].filter((stretch) => stretch >= 0);
    for (const stretch of loose) {
      const [x, y] = this.at(stretch, this.till[stretch] ?? 0);
      let [best, least] = [-1, Infinity];
      free.forEach((other, place) => {
        const [p, q] = this.at(other, this.from[other] ?? 0);
        const apart = Math.hypot(p - x, q - y);
        if (apart < least) [best, least] = [place, apart];
      });
      onward[stretch] = free[best] ?? -1;
      free.splice(best, 1);
    }
  }

  private at(stretch: number, share: number): readonly [number, number] {
    const { to, lattice } = this.crossings;
    const edge = this.edge[stretch] ?? 0;
    const next = to[edge] ?? 0;
    const [x, y] = [lattice.x[edge] ?? 0, lattice.y[edge] ?? 0];
    return [x + share * ((lattice.x[next] ?? 0) - x), y + share * ((lattice.y[next] ?? 0) - y)];
  }

  private rings(): ArcRings {
    const { arcs, lattice } = this.crossings;
    const { unit, middle } = lattice;
    const used = new Uint8Array(this.edge.length);
    const [corners, starts, bits]: [number[], number[], number[]] = [[], [0], []];
    for (let opening = 0; opening < used.length; opening += 1) {
      if (used[opening]) continue;
      for (let at = opening; at >= 0 && !used[at]; at = this.onward[at] ?? -1) {
        used[at] = 1;
        const [from, till] = [this.from[at] ?? 0, this.till[at] ?? 0];
        if (!(till > from)) continue;
        const [x, y] = this.at(at, from);
        corners.push(x * unit + middle[0], y * unit + middle[1]);
        if (arcs === null) continue;
        const edge = (this.edge[at] ?? 0) * ARC;
        const [low, high] = [arcs[edge + 1] ?? 0, arcs[edge + 2] ?? 0];
        bits.push(arcs[edge] ?? 0, low + from * (high - low), low + till * (high - low));
      }
      const begun = starts[starts.length - 1] ?? 0;
      if (corners.length / 2 - begun >= 3) starts.push(corners.length / 2);
      else if (arcs === null) corners.length = begun * 2;
      else if (corners.length / 2 > begun) starts.push(corners.length / 2);
    }
    return {
      corners: Float64Array.from(corners),
      starts: Int32Array.from(starts),
      arcs: arcs === null ? null : Float64Array.from(bits),
    };
  }
}
