import { HIT_TOLERANCE } from '../base/tolerance.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Passage } from '../model/passage.ts';
import type { Facets } from './facets.ts';
import { touchedSolids } from './lensInside.ts';
import type { Tree } from './tree.ts';

/** What a segment meets first: the facet, its solid, and how far along, as a share of the way. */
export interface Hit {
  readonly facet: number;
  readonly solid: number;
  readonly share: number;
}

/** Rays over one scene. Faces count from their outside only; hits within HIT_TOLERANCE of either end do not count. */
export class Segments {
  private readonly facets: Facets;
  private readonly tree: Tree;
  private readonly passages: readonly Passage[];
  private readonly stack = new Int32Array(128);
  /** The last lens, and the solids that it touches. */
  private lens: Vec3 = [Number.NaN, Number.NaN, Number.NaN];
  private touched: Uint8Array | null = null;

  constructor(facets: Facets, tree: Tree) {
    this.facets = facets;
    this.tree = tree;
    this.passages = facets.solids.map(({ passage }) => passage);
  }

  /**
   * The nearest face of the given passage on the open segment; null where the way is free. On equal distance the solid of
   * the lower index is named.
   * Cost: logarithmic in facets, no allocation but the answer.
   */
  firstHit(from: Vec3, to: Vec3, passage: Passage): Hit | null {
    return this.nearest(from, to, passage, false);
  }

  /** The nearest face of a screen that is seen at so low an angle to its sheet that it closes up; null where there is none. */
  closedHit(from: Vec3, to: Vec3): Hit | null {
    return this.facets.sheets === null ? null : this.nearest(from, to, 'screen', true);
  }

  private nearest(from: Vec3, to: Vec3, passage: Passage, closedOnly: boolean): Hit | null {
    const [dx, dy, dz] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
    const length = Math.hypot(dx, dy, dz);
    if (!(length > 2 * HIT_TOLERANCE)) return null;
    const least = HIT_TOLERANCE / length;
    const most = 1 - least;
    const [ix, iy, iz] = [1 / dx, 1 / dy, 1 / dz];
    const { boxes, first, amount, order } = this.tree;
    this.settle(from);
    let best = -1;
    let share = most;
    let depth = 0;
    this.stack[depth++] = 0;
    while (depth > 0) {
      const node = this.stack[--depth] ?? 0;
      if (!crosses(boxes, node * 6, from, ix, iy, iz, share)) continue;
      const start = first[node] ?? 0;
      const many = amount[node] ?? 0;
      if (many === 0) {
        if (this.tree.order.length === 0) return null;
        this.stack[depth++] = start;
        this.stack[depth++] = start + 1;
        continue;
      }
      for (let at = start; at < start + many; at += 1) {
        const facet = order[at] ?? 0;
        const solid = this.facets.solid[facet] ?? 0;
        if (this.passages[solid] !== passage) continue;
        if (closedOnly && !this.closes(facet, dx, dy, dz)) continue;
        const met = this.meets(facet, from, dx, dy, dz, this.touched?.[solid] === 1);
        if (!(met > least && met < most)) continue;
        const tied = best >= 0 && met === share && solid < (this.facets.solid[best] ?? 0);
        if (met < share || tied) [best, share] = [facet, met];
      }
    }
    return best < 0 ? null : { facet: best, solid: this.facets.solid[best] ?? 0, share };
  }

  private closes(facet: number, dx: number, dy: number, dz: number): boolean {
    const { sheets, closing } = this.facets;
    if (sheets === null) return false;
    const [nx, ny, nz] = [sheets[facet * 3] ?? 0, sheets[facet * 3 + 1] ?? 0, sheets[facet * 3 + 2] ?? 0];
    if (nx * nx + ny * ny + nz * nz === 0) return false;
    const along = nx * dx + ny * dy + nz * dz;
    return along * along < closing * closing * (dx * dx + dy * dy + dz * dz);
  }

  /** Finds which solids a lens touches, once for all rays from it. */
  private settle(from: Vec3): void {
    const { lens } = this;
    if (lens[0] === from[0] && lens[1] === from[1] && lens[2] === from[2]) return;
    this.lens = [from[0], from[1], from[2]];
    this.touched = touchedSolids(from, this.facets);
  }

  /**
   * Share of the way at which a facet is met from outside; NaN where it is missed.
   * @param within whether it counts from inside too, where it stands off the lens
   */
  private meets(facet: number, from: Vec3, dx: number, dy: number, dz: number, within: boolean): number {
    const { corners, normals } = this.facets;
    const [nx, ny, nz] = [normals[facet * 3] ?? 0, normals[facet * 3 + 1] ?? 0, normals[facet * 3 + 2] ?? 0];
    const facing = nx * dx + ny * dy + nz * dz;
    if (!(facing < 0) && !(within && facing > 0)) return Number.NaN;
    const c = (k: number, axis: 0 | 1 | 2) => (corners[facet * 9 + k * 3 + axis] ?? 0) - from[axis];
    const [ax, ay, az] = [c(0, 0), c(0, 1), c(0, 2)];
    const [bx, by, bz] = [c(1, 0), c(1, 1), c(1, 2)];
    const [cx, cy, cz] = [c(2, 0), c(2, 1), c(2, 2)];
    // Signs of the volumes that the ray spans with each edge, seen from the side that it comes from.
    const sense = facing < 0 ? 1 : -1;
    const off = nx * ax + ny * ay + nz * az;
    if (sense < 0 && off <= HIT_TOLERANCE * Math.hypot(nx, ny, nz)) return Number.NaN;
    const ab = dx * (az * by - ay * bz) + dy * (ax * bz - az * bx) + dz * (ay * bx - ax * by);
    if (ab * sense < 0) return Number.NaN;
    const bc = dx * (bz * cy - by * cz) + dy * (bx * cz - bz * cx) + dz * (by * cx - bx * cy);
    if (bc * sense < 0) return Number.NaN;
    const ca = dx * (cz * ay - cy * az) + dy * (cx * az - cz * ax) + dz * (cy * ax - cx * ay);
    if (ca * sense < 0) return Number.NaN;
    return off / facing;
  }
}

/** Whether a ray enters a box before a share of its way. */
function crosses(
  boxes: Float64Array,
  at: number,
  from: Vec3,
  ix: number,
  iy: number,
  iz: number,
  until: number,
): boolean {
  let low = 0;
  let high = until;
  for (let axis = 0; axis < 3; axis += 1) {
    const inverse = axis === 0 ? ix : axis === 1 ? iy : iz;
    const origin = from[axis as 0 | 1 | 2];
    const least = (boxes[at + axis] ?? 0) - 1e-9;
    const most = (boxes[at + 3 + axis] ?? 0) + 1e-9;
    if (Number.isFinite(inverse)) {
      const a = (least - origin) * inverse;
      const b = (most - origin) * inverse;
      low = Math.max(low, Math.min(a, b));
      high = Math.min(high, Math.max(a, b));
      if (low > high) return false;
    } else if (origin < least || origin > most) return false;
  }
  return true;
}
