import { BOX, STRIDE } from './shadowLayout.ts';

/** Directions around the foot of the lens that are looked along, and the sectors between them. */
const RAYS = 1024;
/** Of a direction, in rays. */
const ROUNDING = 1e-6;
/** What rounding may do to where a shadow ends, m and as a share. */
const SLACK = 1e-9;

/** Directions in turn, counter-clockwise from p, spaced by |p| + |q| = 1: told without a root or an arc. */
const DIRECTIONS = Float64Array.from({ length: RAYS * 2 }, (_, at) => {
  const turn = (4 * (at >> 1)) / RAYS;
  const p = turn < 2 ? 1 - turn : turn - 3;
  const q = turn < 1 ? turn : turn < 3 ? 2 - turn : turn - 4;
  return (at % 2 === 0 ? p : q) / Math.hypot(p, q);
});

/** Neighbours are at most 8 / RAYS rad apart: a chord between them comes nearer to the foot than its ends by this share. */
const SAG = Math.cos(4 / RAYS);

/** The direction of a place as a number of rays, [0, RAYS). */
export function turnOf(p: number, q: number): number {
  const share = q / (Math.abs(p) + Math.abs(q));
  const turn = p < 0 ? 2 - share : share < 0 ? 4 + share : share;
  return (turn * RAYS) / 4;
}

/** Half of all rays. */
export const HALF_TURN = RAYS / 2;

/** How far a direction is turned from another, [−HALF_TURN, HALF_TURN] rays. */
export function turnFrom(middle: number, p: number, q: number): number {
  const off = turnOf(p, q) - middle;
  return off > HALF_TURN ? off - RAYS : off < -HALF_TURN ? off + RAYS : off;
}

/**
 * What of a plane is sure to lie in shadow, sector by sector around the foot of a lens: one stretch of distances in each. What
 * lies in a shadow on both rays beside a sector lies in it between them, since a shadow is convex.
 */
export class Sectors {
  private readonly from = new Float64Array(RAYS).fill(Infinity);
  private readonly to = new Float64Array(RAYS).fill(-Infinity);

  /**
   * Adds shadows of which any two together leave nothing between them on a ray: one, or all of a convex solid.
   * @param numbers of shadows, of which `count` from `first` on are added
   * @param start, end rays between which they lie, as `turnOf` counts; `end` may go on past the last ray
   */
  add(
    numbers: Float64Array,
    sides: Uint8Array,
    first: number,
    count: number,
    start: number,
    end: number,
  ): void {
    let [nearBefore, farBefore] = [Infinity, -Infinity];
    for (let turn = Math.ceil(start); turn <= end; turn += 1) {
      const ray = turn & (RAYS - 1);
      const p = DIRECTIONS[ray * 2] ?? 0;
      const q = DIRECTIONS[ray * 2 + 1] ?? 0;
      let near = Infinity;
      let far = -Infinity;
      for (let shadow = first; shadow < first + count; shadow += 1) {
        const base = shadow * STRIDE;
        const last = base + (sides[shadow] ?? 0) * 3;
        let from = 0;
        let to = Infinity;
        for (let side = base; side < last && from < to; side += 3) {
          const slope = (numbers[side] ?? 0) * p + (numbers[side + 1] ?? 0) * q;
          const k = numbers[side + 2] ?? 0;
          // slope · r + k ≥ 0
          if (slope > 0) {
            if (slope * from + k < 0) from = -k / slope;
          } else if (slope * to + k < 0) to = slope < 0 ? -k / slope : -1;
          else if (slope === 0 && k < 0) to = -1;
        }
        if (!(from < to)) continue;
        if (from < near) near = from;
        if (to > far) far = to;
      }
      const [innermost, outermost] = [Math.max(near, nearBefore), Math.min(far, farBefore) * SAG];
      if (innermost < outermost)
        this.join((turn - 1) & (RAYS - 1), innermost * (1 + SLACK) + SLACK, outermost * (1 - SLACK) - SLACK);
      nearBefore = near;
      farBefore = far;
    }
  }

  /** Adds one shadow. It lies within its box. */
  addOne(numbers: Float64Array, sides: Uint8Array, shadow: number): void {
    const box = shadow * STRIDE + BOX;
    const [left, bottom] = [numbers[box] ?? 0, numbers[box + 1] ?? 0];
    const [right, top] = [numbers[box + 2] ?? 0, numbers[box + 3] ?? 0];
    if (left <= 0 && right >= 0 && bottom <= 0 && top >= 0) {
      this.add(numbers, sides, shadow, 1, 0, RAYS);
      return;
    }
    const middle = turnOf((left + right) / 2, (bottom + top) / 2);
    const [a, b] = [turnFrom(middle, left, bottom), turnFrom(middle, right, bottom)];
    const [c, d] = [turnFrom(middle, left, top), turnFrom(middle, right, top)];
    const start = middle + Math.min(a, b, c, d) + RAYS;
    this.add(numbers, sides, shadow, 1, start, middle + Math.max(a, b, c, d) + RAYS);
  }

  /**
   * Whether a stretch of distances lies in shadow in all sectors that the rays from start to end pass. What lies on a ray, by
   * rounding on either side of it, must lie in shadow on both.
   */
  holds(start: number, end: number, near: number, far: number): boolean {
    const last = Math.floor(end + ROUNDING);
    for (let turn = Math.floor(start - ROUNDING); turn <= last; turn += 1) {
      const sector = turn & (RAYS - 1);
      if (near < (this.from[sector] ?? 0) || far > (this.to[sector] ?? 0)) return false;
    }
    return true;
  }

  /**
   * Whether a stretch of a line lies in shadow together with what is just beside it.
   * @param from, to as in `Line`: t along (b, −a) from the place nearest to the foot
   */
  holdsStretch(a: number, b: number, k: number, from: number, to: number): boolean {
    const start = turnOf(-k * a + from * b, -k * b - from * a);
    const off = turnFrom(start, -k * a + to * b, -k * b - to * a);
    const near2 = from <= 0 && to >= 0 ? 0 : Math.min(from * from, to * to);
    const far2 = Math.max(from * from, to * to);
    return this.holds(
      off < 0 ? start + off : start,
      off > 0 ? start + off : start,
      Math.sqrt(near2 + k * k),
      Math.sqrt(far2 + k * k),
    );
  }

  /** Where two stretches are apart the longer one is kept. */
  private join(sector: number, from: number, to: number): void {
    const [a, b] = [this.from[sector] ?? Infinity, this.to[sector] ?? -Infinity];
    if (from <= b && to >= a) {
      this.from[sector] = Math.min(a, from);
      this.to[sector] = Math.max(b, to);
    } else if (to - from > b - a) {
      this.from[sector] = from;
      this.to[sector] = to;
    }
  }
}
