import { HIT_TOLERANCE, TARGET_CUT } from '../base/tolerance.ts';
import { isFaceDark } from './darkFace.ts';
import type { Faces } from './faces.ts';
import { MOST_CORNERS } from './faceSize.ts';
import type { Footing } from './footing.ts';
import type { Pyramid } from './pyramid.ts';
import type { Sectors } from './sectors.ts';
import { BOX, DEPTH, STRIDE, type Shadows } from './shadowLayout.ts';

/** Writes the shadows of faces one after the other. Nothing is allocated a face but for the list's growth. */
export class ShadowMaker {
  /** Whether of a face added since this was set to false some hides nothing, for the lens is next to its plane. */
  limited = false;
  /** What nearer solids are sure to hide: faces that can hide no more than that are left out. Null where nothing is known. */
  dark: Sectors | null = null;
  private count = 0;
  private room: number;
  private numbers: Float64Array;
  private sides: Uint8Array;
  private outline: Uint8Array;
  private solid: Int32Array;
  private facet: Int32Array;
  /** Corners from the lens: p along u, q along v, h along the normal, and w, the share of the way to the plane. */
  private readonly local = new Float64Array(MOST_CORNERS * 4);
  /** Sides and outline bits of the shadow that is being written. */
  private put = 0;
  private shown = 0;
  private readonly faces: Faces;
  /** Lens, u, v and normal of the plane, and the lens's distance along it, at one place: this is read for every corner. */
  private readonly axes: Float64Array;
  private readonly pyramid: Pyramid;
  /** Depths between which a face hides, and the shares of the way that they stand for. */
  private readonly least = 1 + TARGET_CUT;
  private readonly most: number;
  private readonly reach: number;
  private readonly nearW: number;
  private readonly farW: number;

  constructor(faces: Faces, footing: Footing, pyramid: Pyramid, reach: number, room: number) {
    this.room = Math.max(16, room);
    this.numbers = new Float64Array(this.room * STRIDE);
    this.sides = new Uint8Array(this.room);
    this.outline = new Uint8Array(this.room);
    this.solid = new Int32Array(this.room);
    this.facet = new Int32Array(this.room);
    this.faces = faces;
    const { eye, plane, delta } = footing;
    this.axes = Float64Array.from([...eye, ...plane.u, ...plane.v, ...plane.normal, delta]);
    this.pyramid = pyramid;
    this.reach = reach;
    this.most = Math.max(reach, Math.abs(delta)) / HIT_TOLERANCE;
    this.nearW = 1 / this.most;
    // The plane is taken a hair along its normal, as the cut of solids is: a face in it is before it from behind only.
    this.farW = footing.delta > 0 ? this.least : 1 / this.least;
  }

  /** How many shadows there are by now. */
  get made(): number {
    return this.count;
  }

  shadows(): Shadows {
    const { count, numbers, sides, outline, solid, facet, dark } = this;
    return { count, numbers, sides, outline, solid, facet, dark };
  }

  /**
   * Adds the shadows that faces of a solid have in the window. `pyramid` was last asked for a box that holds them.
   * @param touched whether the lens touches the solid: then its back faces hide too, where they stand off the lens
   */
  add(from: number, to: number, solid: number, touched: boolean): void {
    const { normals, corners } = this.faces;
    const ex = this.axes[0] ?? 0;
    const ey = this.axes[1] ?? 0;
    const ez = this.axes[2] ?? 0;
    for (let face = from; face < to; face += 1) {
      const n = face * 4;
      const at = face * MOST_CORNERS * 3;
      const d =
        (normals[n] ?? 0) * ((corners[at] ?? 0) - ex) +
        (normals[n + 1] ?? 0) * ((corners[at + 1] ?? 0) - ey) +
        (normals[n + 2] ?? 0) * ((corners[at + 2] ?? 0) - ez);
      if (Math.abs(d) <= 2 * HIT_TOLERANCE * (normals[n + 3] ?? 0)) this.limited = true;
      if (d < 0) this.addFacing(face, solid, d);
      else if (touched && d > HIT_TOLERANCE * (normals[n + 3] ?? 0)) this.addFacing(face, solid, d);
    }
  }

  /** @param d normal · first corner, from the lens: below 0 for a front face */
  private addFacing(face: number, solid: number, d: number): void {
    const { axes, faces } = this;
    const { normals } = faces;
    const corners = faces.sides[face] ?? 0;
    if (this.cornersMiss(face * MOST_CORNERS * 3, corners)) return;
    if (this.count === this.room) this.grow();
    if (this.dark !== null && isFaceDark(this.dark, this.local, corners, this.reach)) return;
    const base = this.count * STRIDE;
    if (!this.writeBox(base, corners)) return;
    const { numbers } = this;
    const n = face * 4;
    const nx = normals[n] ?? 0;
    const ny = normals[n + 1] ?? 0;
    const nz = normals[n + 2] ?? 0;
    const sa = (nx * (axes[3] ?? 0) + ny * (axes[4] ?? 0) + nz * (axes[5] ?? 0)) / d;
    const sb = (nx * (axes[6] ?? 0) + ny * (axes[7] ?? 0) + nz * (axes[8] ?? 0)) / d;
    const sk = ((nx * (axes[9] ?? 0) + ny * (axes[10] ?? 0) + nz * (axes[11] ?? 0)) * (axes[12] ?? 0)) / d;
    numbers[base + DEPTH] = sa;
    numbers[base + DEPTH + 1] = sb;
    numbers[base + DEPTH + 2] = sk;
    const nearLens = Math.abs(d) <= HIT_TOLERANCE * (normals[n + 3] ?? 0);
    this.put = 0;
    this.shown = 0;
    if (!this.writeEdges(base, face, corners, d < 0 ? 1 : -1, nearLens)) return;
    // A face that only touches the plane ends there by its own edge: a cut beside it would be a second line, a hair away.
    if (this.farthest > this.least && !this.side(base, sa, sb, sk - this.least, true)) return;
    if (nearLens && !this.side(base, -sa, -sb, this.most - sk, true)) return;
    this.sides[this.count] = this.put;
    this.outline[this.count] = this.shown;
    this.solid[this.count] = solid;
    this.facet[this.count] = faces.facet[face] ?? -1;
    this.count += 1;
  }

  /** Least and greatest w of the corners in `local`. */
  private nearest = 0;
  private farthest = 0;

  /** Fills `local`; true where all corners are on the far side of the plane, behind the lens or outside the window. */
  private cornersMiss(from: number, count: number): boolean {
    const { axes, local, pyramid } = this;
    const { corners } = this.faces;
    const ex = axes[0] ?? 0;
    const ey = axes[1] ?? 0;
    const ez = axes[2] ?? 0;
    const ux = axes[3] ?? 0;
    const uy = axes[4] ?? 0;
    const uz = axes[5] ?? 0;
    const vx = axes[6] ?? 0;
    const vy = axes[7] ?? 0;
    const vz = axes[8] ?? 0;
    const nx = axes[9] ?? 0;
    const ny = axes[10] ?? 0;
    const nz = axes[11] ?? 0;
    const delta = axes[12] ?? 0;
    let nearest = Infinity;
    let farthest = -Infinity;
    for (let k = 0; k < count; k += 1) {
      const dx = (corners[from + k * 3] ?? 0) - ex;
      const dy = (corners[from + k * 3 + 1] ?? 0) - ey;
      const dz = (corners[from + k * 3 + 2] ?? 0) - ez;
      const h = dx * nx + dy * ny + dz * nz;
      const w = h / delta;
      local[k * 4] = dx * ux + dy * uy + dz * uz;
      local[k * 4 + 1] = dx * vx + dy * vy + dz * vz;
      local[k * 4 + 2] = h;
      local[k * 4 + 3] = w;
      if (w < nearest) nearest = w;
      if (w > farthest) farthest = w;
    }
    this.nearest = nearest;
    this.farthest = farthest;
    if (nearest >= this.farW || farthest <= 0) return true;
    const { sides, open, opened } = pyramid;
    for (let one = 0; one < opened; one += 1) {
      const side = open[one] ?? 0;
      const a = sides[side] ?? 0;
      const b = sides[side + 1] ?? 0;
      const c = sides[side + 2] ?? 0;
      let k = 0;
      while (k < count * 4 && a * (local[k] ?? 0) + b * (local[k + 1] ?? 0) + c * (local[k + 3] ?? 0) < 0)
        k += 4;
      if (k === count * 4) return true;
    }
    return false;
  }

  /** The box of the shadow, from the face clipped between the lens's and the target's tolerance; false where nothing is left. */
  private writeBox(base: number, count: number): boolean {
    const { local, numbers, nearW } = this;
    // A face that stands on the plane has its foot there: lines along it must not pass by the box.
    const farW = this.least;
    let left = Infinity;
    let bottom = Infinity;
    let right = -Infinity;
    let top = -Infinity;
    const clipped = this.nearest < nearW || this.farthest > farW;
    for (let k = 0; k < count; k += 1) {
      const i = k * 4;
      const w0 = local[i + 3] ?? 0;
      if (w0 >= nearW && w0 <= farW) {
        const p = (local[i] ?? 0) / w0;
        const q = (local[i + 1] ?? 0) / w0;
        if (p < left) left = p;
        if (p > right) right = p;
        if (q < bottom) bottom = q;
        if (q > top) top = q;
      }
      if (!clipped) continue;
      const j = k + 1 === count ? 0 : i + 4;
      const w1 = local[j + 3] ?? 0;
      for (let end = 0; end < 2; end += 1) {
        const cut = end === 0 ? nearW : farW;
        if (w0 < cut === w1 < cut) continue;
        const share = (cut - w0) / (w1 - w0);
        const p = ((local[i] ?? 0) + share * ((local[j] ?? 0) - (local[i] ?? 0))) / cut;
        const q = ((local[i + 1] ?? 0) + share * ((local[j + 1] ?? 0) - (local[i + 1] ?? 0))) / cut;
        if (p < left) left = p;
        if (p > right) right = p;
        if (q < bottom) bottom = q;
        if (q > top) top = q;
      }
    }
    if (left > right) return false;
    const slack = 4e-9 * Math.max(1, right - left, top - bottom, Math.abs(left), Math.abs(bottom));
    numbers[base + BOX] = left - slack;
    numbers[base + BOX + 1] = bottom - slack;
    numbers[base + BOX + 2] = right + slack;
    numbers[base + BOX + 3] = top + slack;
    return true;
  }

  /** The half-planes E_k = Q_{k+1} × Q_k of a face's edges, in coordinates of the plane; the other way round of a back face. */
  private writeEdges(base: number, face: number, count: number, sense: number, nearLens: boolean): boolean {
    const { local } = this;
    const touching = 1 / this.least;
    const delta = this.axes[12] ?? 0;
    const { neighbours } = this.faces;
    for (let k = 0; k < count; k += 1) {
      const i = k * 4;
      const j = k + 1 === count ? 0 : i + 4;
      const p0 = local[i] ?? 0;
      const q0 = local[i + 1] ?? 0;
      const h0 = local[i + 2] ?? 0;
      const p1 = local[j] ?? 0;
      const q1 = local[j + 1] ?? 0;
      const h1 = local[j + 2] ?? 0;
      // An edge in the plane bounds the shadow, whatever its neighbour below the plane faces.
      const grounded = (local[i + 3] ?? 0) > touching && (local[j + 3] ?? 0) > touching;
      const shown =
        sense < 0 || nearLens || grounded || !this.isFront(neighbours[face * MOST_CORNERS + k] ?? -1);
      const a = sense * (h0 * q1 - q0 * h1);
      const b = sense * (p0 * h1 - h0 * p1);
      if (!this.side(base, a, b, sense * (q0 * p1 - p0 * q1) * delta, shown)) return false;
    }
    return true;
  }

  /** Writes a half-plane; one that says the same everywhere is left out, or leaves nothing: false. */
  private side(base: number, a: number, b: number, k: number, shown: boolean): boolean {
    const { numbers } = this;
    const size = Math.sqrt(a * a + b * b);
    if (size <= 1e-13 * Math.abs(k)) return k >= 0;
    const at = base + this.put * 3;
    numbers[at] = a / size;
    numbers[at + 1] = b / size;
    numbers[at + 2] = k / size;
    if (shown) this.shown |= 1 << this.put;
    this.put += 1;
    return true;
  }

  /** Whether a face turns its outside to the lens and stands off it, so that an edge shared with it is inside the shadow. */
  private isFront(face: number): boolean {
    if (face < 0) return false;
    const { corners, normals } = this.faces;
    const ex = this.axes[0] ?? 0;
    const ey = this.axes[1] ?? 0;
    const ez = this.axes[2] ?? 0;
    const at = face * MOST_CORNERS * 3;
    const n = face * 4;
    const d =
      (normals[n] ?? 0) * ((corners[at] ?? 0) - ex) +
      (normals[n + 1] ?? 0) * ((corners[at + 1] ?? 0) - ey) +
      (normals[n + 2] ?? 0) * ((corners[at + 2] ?? 0) - ez);
    return d < -HIT_TOLERANCE * (normals[n + 3] ?? 0);
  }

  private grow(): void {
    const size = this.room * 2;
    this.numbers = widened(this.numbers, new Float64Array(size * STRIDE));
    this.sides = widened(this.sides, new Uint8Array(size));
    this.outline = widened(this.outline, new Uint8Array(size));
    this.solid = widened(this.solid, new Int32Array(size));
    this.facet = widened(this.facet, new Int32Array(size));
    this.room = size;
  }
}

function widened<T extends Float64Array | Uint8Array | Int32Array>(from: T, to: T): T {
  to.set(from);
  return to;
}
