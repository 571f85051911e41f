import { HIT_TOLERANCE, TARGET_CUT } from '../base/tolerance.ts';
import { dot } from '../base/vector.ts';
import type { Passage } from '../model/passage.ts';
import type { FacetGroup, Facets } from './facets.ts';
import type { Footing } from './footing.ts';
import type { HalfPlanes } from './halfPlanes.ts';

/** Most half-planes that one shadow can have: three edges, the cut at the target, the cut at the lens. */
const MOST_SIDES = 5;
/** Numbers a shadow: its half-planes, then depth s = a·p + b·q + k, then its box: least p, q, greatest p, q. */
export const STRIDE = MOST_SIDES * 3 + 7;
export const DEPTH = MOST_SIDES * 3;
export const BOX = DEPTH + 3;

/**
 * What front faces throw on a plane. Shadow i holds the targets p, q for which all of its half-planes are ≥ 0; there
 * its face stands 1/s of the way from lens to target, so the largest s is nearest the lens.
 */
export interface Shadows {
  readonly count: number;
  readonly numbers: Float64Array;
  /** Half-planes of each shadow. */
  readonly sides: Uint8Array;
  /** Bit j: side j can be an outline, since no front face of the same solid goes on beyond it. */
  readonly outline: Uint8Array;
  /** Index of the solid, and of the facet that throws it; −1 where none does. */
  readonly solid: Int32Array;
  readonly facet: Int32Array;
}

/**
 * The shadows of the facets of one passage, within a window.
 * @param window half-planes relative to the foot; a facet wholly outside one of them is left out
 * @param reach  greatest distance from the lens to a target in the window, m
 * Source: DEVELOPERS.md, "Shadows": half-planes E = σ·Q × Q' through the lens, affine on the plane.
 */
export function shadowsOf(
  facets: Facets,
  footing: Footing,
  window: HalfPlanes,
  reach: number,
  passage: Passage,
): Shadows {
  const found = new Builder(facets, footing, window, reach);
  for (const group of facets.groups) {
    if (group.passage !== passage || found.misses(group)) continue;
    for (let facet = group.from; facet < group.to; facet += 1) found.add(facet, group.solid);
  }
  return found.shadows();
}

class Builder {
  private count = 0;
  private numbers = new Float64Array(64 * STRIDE);
  private sides = new Uint8Array(64);
  private outline = new Uint8Array(64);
  private solid = new Int32Array(64);
  private facet = new Int32Array(64);
  /** Corners relative to the lens along u, v and as a share w of the way to the plane. */
  private readonly local = new Float64Array(9);
  private readonly windowRows: Float64Array;
  private readonly least: number;
  private readonly most: number;
  private readonly facets: Facets;
  private readonly footing: Footing;

  constructor(facets: Facets, footing: Footing, window: HalfPlanes, reach: number) {
    this.facets = facets;
    this.footing = footing;
    this.windowRows = Float64Array.from(window.flat());
    this.least = 1 + TARGET_CUT;
    this.most = Math.max(reach, Math.abs(footing.delta)) / HIT_TOLERANCE;
  }

  shadows(): Shadows {
    const { count, numbers, sides, outline, solid, facet } = this;
    return { count, numbers, sides, outline, solid, facet };
  }

  /** Whether a solid's box lies wholly outside the pyramid from the lens over the window, or beyond the plane. */
  misses({ box }: FacetGroup): boolean {
    const { eye, plane, delta } = this.footing;
    const rows = this.windowRows;
    let beyond = true;
    let behind = true;
    let outside = -1;
    for (let corner = 0; corner < 8; corner += 1) {
      const dx = (box[corner & 1 ? 3 : 0] ?? 0) - eye[0];
      const dy = (box[corner & 2 ? 4 : 1] ?? 0) - eye[1];
      const dz = (box[corner & 4 ? 5 : 2] ?? 0) - eye[2];
      const p = dx * plane.u[0] + dy * plane.u[1] + dz * plane.u[2];
      const q = dx * plane.v[0] + dy * plane.v[1] + dz * plane.v[2];
      const w = (dx * plane.normal[0] + dy * plane.normal[1] + dz * plane.normal[2]) / delta;
      if (w < 1) beyond = false;
      if (w > 0) behind = false;
      let mask = 0;
      for (let row = 0, bit = 1; row < rows.length; row += 3, bit *= 2)
        if ((rows[row] ?? 0) * p + (rows[row + 1] ?? 0) * q + (rows[row + 2] ?? 0) * w < 0) mask |= bit;
      outside &= mask;
    }
    return beyond || behind || outside !== 0;
  }

  add(facet: number, solid: number): void {
    const { facets, footing } = this;
    const { corners, normals } = facets;
    const at = facet * 9;
    const x0 = (corners[at] ?? 0) - footing.eye[0];
    const y0 = (corners[at + 1] ?? 0) - footing.eye[1];
    const z0 = (corners[at + 2] ?? 0) - footing.eye[2];
    const nx = normals[facet * 3] ?? 0;
    const ny = normals[facet * 3 + 1] ?? 0;
    const nz = normals[facet * 3 + 2] ?? 0;
    const d = nx * x0 + ny * y0 + nz * z0;
    if (!(d < 0) || this.cornersMiss(at)) return;
    this.grow();
    const base = this.count * STRIDE;
    if (!this.writeBox(base)) return;
    const { plane, delta } = footing;
    const depth = base + DEPTH;
    this.numbers[depth] = (nx * plane.u[0] + ny * plane.u[1] + nz * plane.u[2]) / d;
    this.numbers[depth + 1] = (nx * plane.v[0] + ny * plane.v[1] + nz * plane.v[2]) / d;
    this.numbers[depth + 2] =
      ((nx * plane.normal[0] + ny * plane.normal[1] + nz * plane.normal[2]) * delta) / d;
    this.writeSides(base, facet, solid, d, Math.hypot(nx, ny, nz));
  }

  /** Fills `local`; true where all corners are on the far side of the plane, behind the lens or outside the window. */
  private cornersMiss(at: number): boolean {
    const { eye, plane, delta } = this.footing;
    const { corners } = this.facets;
    const rows = this.windowRows;
    const most = 1 / this.least;
    let beyond = true;
    let behind = true;
    let outside = -1;
    for (let k = 0; k < 3; k += 1) {
      const dx = (corners[at + k * 3] ?? 0) - eye[0];
      const dy = (corners[at + k * 3 + 1] ?? 0) - eye[1];
      const dz = (corners[at + k * 3 + 2] ?? 0) - eye[2];
      const p = dx * plane.u[0] + dy * plane.u[1] + dz * plane.u[2];
      const q = dx * plane.v[0] + dy * plane.v[1] + dz * plane.v[2];
      const w = (dx * plane.normal[0] + dy * plane.normal[1] + dz * plane.normal[2]) / delta;
      this.local[k * 3] = p;
      this.local[k * 3 + 1] = q;
      this.local[k * 3 + 2] = w;
      if (w < most) beyond = false;
      if (w > 0) behind = false;
      let mask = 0;
      for (let row = 0, bit = 1; row < rows.length; row += 3, bit *= 2)
        if ((rows[row] ?? 0) * p + (rows[row + 1] ?? 0) * q + (rows[row + 2] ?? 0) * w < 0) mask |= bit;
      outside &= mask;
    }
    return beyond || behind || outside !== 0;
  }

  /** The box of the shadow, from the facet clipped between the lens's and the target's tolerance; false where nothing is left. */
  private writeBox(base: number): boolean {
    const { local, numbers } = this;
    const [nearW, farW] = [1 / this.most, 1 / this.least];
    let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
    const take = (p: number, q: number, w: number) => {
      left = Math.min(left, p / w);
      right = Math.max(right, p / w);
      bottom = Math.min(bottom, q / w);
      top = Math.max(top, q / w);
    };
    for (let k = 0; k < 3; k += 1) {
      const [i, j] = [k * 3, ((k + 1) % 3) * 3];
      const [p0, q0, w0] = [local[i] ?? 0, local[i + 1] ?? 0, local[i + 2] ?? 0];
      const [p1, q1, w1] = [local[j] ?? 0, local[j + 1] ?? 0, local[j + 2] ?? 0];
      if (w0 >= nearW && w0 <= farW) take(p0, q0, w0);
      for (const cut of [nearW, farW]) {
        if (w0 < cut === w1 < cut) continue;
        const share = (cut - w0) / (w1 - w0);
        take(p0 + share * (p1 - p0), q0 + share * (q1 - q0), cut);
      }
    }
    if (left > right) return false;
    const slack = 1e-9 * Math.max(1, right - left, top - bottom, Math.abs(left), Math.abs(bottom));
    numbers[base + BOX] = left - slack;
    numbers[base + BOX + 1] = bottom - slack;
    numbers[base + BOX + 2] = right + slack;
    numbers[base + BOX + 3] = top + slack;
    return true;
  }

  private writeSides(base: number, facet: number, solid: number, d: number, normal: number): void {
    const { facets, footing, local, numbers } = this;
    const { plane, delta, eye } = footing;
    const nearLens = -d <= HIT_TOLERANCE * normal;
    const touching = 1 / this.least;
    let sides = 0;
    let outline = 0;
    const put = (a: number, b: number, k: number, isOutline: boolean): boolean => {
      const size = Math.hypot(a, b);
      if (size <= 1e-13 * Math.abs(k)) return k >= 0;
      numbers[base + sides * 3] = a / size;
      numbers[base + sides * 3 + 1] = b / size;
      numbers[base + sides * 3 + 2] = k / size;
      if (isOutline) outline |= 1 << sides;
      sides += 1;
      return true;
    };
    const { corners } = facets;
    for (let k = 0; k < 3; k += 1) {
      const [i, j] = [facet * 9 + k * 3, facet * 9 + ((k + 1) % 3) * 3];
      const [x0, y0, z0] = [
        (corners[i] ?? 0) - eye[0],
        (corners[i + 1] ?? 0) - eye[1],
        (corners[i + 2] ?? 0) - eye[2],
      ];
      const [x1, y1, z1] = [
        (corners[j] ?? 0) - eye[0],
        (corners[j + 1] ?? 0) - eye[1],
        (corners[j + 2] ?? 0) - eye[2],
      ];
      const e = [z0 * y1 - y0 * z1, x0 * z1 - z0 * x1, y0 * x1 - x0 * y1] as const;
      // An edge in the plane bounds the shadow, whatever its neighbour below the plane faces.
      const grounded = (local[k * 3 + 2] ?? 0) > touching && (local[((k + 1) % 3) * 3 + 2] ?? 0) > touching;
      const shown = nearLens || grounded || !this.isFront(facets.neighbours[facet * 3 + k] ?? -1);
      if (!put(dot(e, plane.u), dot(e, plane.v), dot(e, plane.normal) * delta, shown)) return;
    }
    const farthest = Math.max(local[2] ?? 0, local[5] ?? 0, local[8] ?? 0);
    const [sa, sb, sk] = [
      numbers[base + DEPTH] ?? 0,
      numbers[base + DEPTH + 1] ?? 0,
      numbers[base + DEPTH + 2] ?? 0,
    ];
    // A face that only touches the plane ends there by its own edge: a cut beside it would be a second line, a hair away.
    if (farthest > this.least && !put(sa, sb, sk - this.least, true)) return;
    if (nearLens && !put(-sa, -sb, this.most - sk, true)) return;
    this.sides[this.count] = sides;
    this.outline[this.count] = outline;
    this.solid[this.count] = solid;
    this.facet[this.count] = facet;
    this.count += 1;
  }

  /** Whether a facet turns its outside to the lens and stands off it, so that an edge shared with it is inside the shadow. */
  private isFront(facet: number): boolean {
    if (facet < 0) return false;
    const { corners, normals } = this.facets;
    const { eye } = this.footing;
    const [nx, ny, nz] = [normals[facet * 3] ?? 0, normals[facet * 3 + 1] ?? 0, normals[facet * 3 + 2] ?? 0];
    const d =
      nx * ((corners[facet * 9] ?? 0) - eye[0]) +
      ny * ((corners[facet * 9 + 1] ?? 0) - eye[1]) +
      nz * ((corners[facet * 9 + 2] ?? 0) - eye[2]);
    return d < -HIT_TOLERANCE * Math.hypot(nx, ny, nz);
  }

  private grow(): void {
    if (this.count < this.sides.length) return;
    const size = this.sides.length * 2;
    this.numbers = widened(this.numbers, new Float64Array(size * STRIDE));
    this.sides = widened(this.sides, new Uint8Array(size));
    this.outline = widened(this.outline, new Uint8Array(size));
    this.solid = widened(this.solid, new Int32Array(size));
    this.facet = widened(this.facet, new Int32Array(size));
  }
}

function widened<T extends Float64Array | Uint8Array | Int32Array>(from: T, to: T): T {
  to.set(from);
  return to;
}
