/** Two depths nearer than this share of themselves, the rounding of single precision, tie. */
const TIE = 2 ** -24;
const NEARER = 1 + TIE;

/** Of each stretch in `nodes`: first and last column, owner, and the next stretch of the row or −1. */
const [TO, OWNER, NEXT, WIDTH] = [1, 2, 3, 4] as const;
/** Where the first stretch of a row stands, and whose place in `depths` is the span's that is being put. */
const HEAD: number = WIDTH;
const GIVEN = 0;

/**
 * One row of cells as stretches, each with what is nearest along it and its depth s = start + step·column; −1 at depth 0
 * where there is nothing. One object serves many rows.
 */
export class StretchList {
  /**
   * Start and step of each stretch; the caller writes those of a span to the first two places before it puts it. Numbers
   * with a fraction are handed over so because a call would allocate them.
   */
  depths = new Float64Array(256 * 2);
  private nodes = new Int32Array(256 * WIDTH);
  private used = 0;
  /** The stretch that was written last, and the same where the span that is being put wrote it, else −1. */
  private written = HEAD;
  private own = -1;

  /** A row of nothing. */
  reset(low: number, high: number): void {
    this.used = HEAD;
    this.written = HEAD;
    this.depths[GIVEN] = 0;
    this.depths[GIVEN + 1] = 0;
    this.make(low, high, -1, -1, GIVEN);
  }

  /**
   * Lays a span over the row: it takes the columns in which it is nearer than what is there, by more than TIE. Depths are
   * straight along both, so that within a stretch they cross at most once.
   */
  put(low: number, high: number, owner: number): void {
    let { nodes, depths } = this;
    const start = depths[GIVEN] ?? 0;
    const step = depths[GIVEN + 1] ?? 0;
    // Spans of one solid come together: what the span before wrote is often near.
    let at = this.written;
    if ((nodes[at] ?? 0) > low) at = HEAD;
    this.own = -1;
    while ((nodes[at + TO] ?? 0) < low) at = nodes[at + NEXT] ?? 0;
    while (at >= 0) {
      const from = nodes[at] ?? 0;
      if (from > high) return;
      const to = nodes[at + TO] ?? 0;
      const after = nodes[at + NEXT] ?? -1;
      const first = low > from ? low : from;
      const last = high < to ? high : to;
      const there = (depths[at >> 1] ?? 0) * NEARER;
      const rise = (depths[(at >> 1) + 1] ?? 0) * NEARER;
      const gain0 = start + step * first - (there + rise * first);
      const gain1 = start + step * last - (there + rise * last);
      if (gain0 > 0 || gain1 > 0) {
        let since = first;
        let until = last;
        if (!(gain0 > 0 && gain1 > 0)) {
          const cross = first + ((last - first) * gain0) / (gain0 - gain1);
          if (gain0 > 0) until = Math.max(first, Math.min(last - 1, Math.ceil(cross) - 1));
          else since = Math.min(last, Math.max(first + 1, Math.floor(cross) + 1));
        }
        this.take(at, since, until, owner);
        ({ nodes, depths } = this);
      }
      at = after;
    }
  }

  /**
   * Reads the row, neighbours with one owner as one: first and last column and owner of each.
   * @returns how many numbers were written
   */
  read(into: Int32Array): number {
    const { nodes } = this;
    let count = 0;
    let at = HEAD;
    while (at >= 0) {
      const owner = nodes[at + OWNER] ?? -1;
      into[count] = nodes[at] ?? 0;
      let to = nodes[at + TO] ?? 0;
      at = nodes[at + NEXT] ?? -1;
      while (at >= 0 && nodes[at + OWNER] === owner) {
        to = nodes[at + TO] ?? 0;
        at = nodes[at + NEXT] ?? -1;
      }
      into[count + 1] = to;
      into[count + 2] = owner;
      count += 3;
    }
    return count;
  }

  /** Gives columns first to last of a stretch to the span that is being put. */
  private take(at: number, first: number, last: number, owner: number): void {
    const { nodes, own } = this;
    const from = nodes[at] ?? 0;
    const to = nodes[at + TO] ?? 0;
    if (first === from && own >= 0 && nodes[own + TO] === first - 1) {
      // Goes on where the same span has just written.
      nodes[own + TO] = last;
      if (last === to) nodes[own + NEXT] = nodes[at + NEXT] ?? -1;
      else nodes[at] = last + 1;
      return;
    }
    let next = nodes[at + NEXT] ?? -1;
    if (last < to) next = this.make(last + 1, to, nodes[at + OWNER] ?? -1, next, at);
    let mine = at;
    if (first > from) {
      mine = this.make(first, last, owner, next, GIVEN);
      this.nodes[at + TO] = first - 1;
      this.nodes[at + NEXT] = mine;
    } else this.set(at, from, last, owner, next, GIVEN);
    this.written = mine;
    this.own = mine;
  }

  private make(from: number, to: number, owner: number, next: number, depthOf: number): number {
    const at = this.used;
    if (at === this.nodes.length) this.grow();
    this.used += WIDTH;
    this.set(at, from, to, owner, next, depthOf);
    return at;
  }

  private set(at: number, from: number, to: number, owner: number, next: number, depthOf: number): void {
    const { nodes, depths } = this;
    nodes[at] = from;
    nodes[at + TO] = to;
    nodes[at + OWNER] = owner;
    nodes[at + NEXT] = next;
    depths[at >> 1] = depths[depthOf >> 1] ?? 0;
    depths[(at >> 1) + 1] = depths[(depthOf >> 1) + 1] ?? 0;
  }

  private grow(): void {
    const nodes = new Int32Array(this.nodes.length * 2);
    nodes.set(this.nodes);
    this.nodes = nodes;
    const depths = new Float64Array(this.depths.length * 2);
    depths.set(this.depths);
    this.depths = depths;
  }
}
