import { HIT_TOLERANCE } from '../base/tolerance.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Clumps } from './clumps.ts';
import type { Faces } from './faces.ts';
import { MOST_CORNERS } from './faceSize.ts';

/** Most faces that are held before what lies behind. */
const MOST = 64;
/** With more faces than this in the window, each is too small to hide much. */
const TOO_MANY = 50_000;
/** What rounding may do to a side of a cone, as a share of its terms. */
const SLACK = 1e-9;
/** How much farther, as a share of its distance, what is hidden must lie, so that depths never tie. */
const BEHIND = 1e-6;

/** Numbers a face: its sides from the lens, three each, then its normal and how far its plane lies along it. */
const STRIDE = MOST_CORNERS * 3 + 4;

/**
 * The faces that take up most of what a lens sees. What lies wholly in the cone of one and behind it throws no shadow that
 * its own does not cover, from nearer: neither cells nor outlines nor what hides first need it.
 */
export class Occluders {
  private count = 0;
  /** Where the smallest of those chosen stands, once all places are taken. */
  private least = 0;
  private readonly chosen = new Int32Array(MOST);
  private readonly sizes = new Float64Array(MOST);
  private readonly numbers = new Float64Array(MOST * STRIDE);
  private readonly sides = new Uint8Array(MOST);
  private readonly eye: Float64Array;

  /** @param within the clumps whose faces are looked at */
  constructor(faces: Faces, { starts }: Clumps, within: Int32Array, eye: Vec3) {
    this.eye = Float64Array.from(eye);
    let all = 0;
    for (const clump of within) all += (starts[clump + 1] ?? 0) - (starts[clump] ?? 0);
    if (all > TOO_MANY) return;
    for (const clump of within) this.choose(faces, starts[clump] ?? 0, starts[clump + 1] ?? 0);
    const order = Array.from(this.chosen.subarray(0, this.count).keys()).sort(
      (one, two) => (this.sizes[two] ?? 0) - (this.sizes[one] ?? 0),
    );
    order.forEach((one, at) => this.write(faces, this.chosen[one] ?? 0, at));
  }

  /** Whether a box (least, then greatest x, y, z, from `at` on) lies wholly behind one of the faces. */
  hides(box: Float64Array, at: number): boolean {
    const { eye, numbers, sides } = this;
    const x0 = box[at] ?? 0;
    const y0 = box[at + 1] ?? 0;
    const z0 = box[at + 2] ?? 0;
    const hx = ((box[at + 3] ?? 0) - x0) / 2;
    const hy = ((box[at + 4] ?? 0) - y0) / 2;
    const hz = ((box[at + 5] ?? 0) - z0) / 2;
    const cx = x0 + hx - (eye[0] ?? 0);
    const cy = y0 + hy - (eye[1] ?? 0);
    const cz = z0 + hz - (eye[2] ?? 0);
    for (let one = 0; one < this.count; one += 1) {
      const base = one * STRIDE;
      const last = base + (sides[one] ?? 0) * 3;
      let side = base;
      while (side < last) {
        const a = numbers[side] ?? 0;
        const b = numbers[side + 1] ?? 0;
        const c = numbers[side + 2] ?? 0;
        const middle = a * cx + b * cy + c * cz;
        const half = Math.abs(a) * hx + Math.abs(b) * hy + Math.abs(c) * hz;
        if (!(middle - half > SLACK * (middle + half))) break;
        side += 3;
      }
      if (side < last) continue;
      const n = base + MOST_CORNERS * 3;
      const nx = numbers[n] ?? 0;
      const ny = numbers[n + 1] ?? 0;
      const nz = numbers[n + 2] ?? 0;
      const farthest =
        nx * cx + ny * cy + nz * cz + Math.abs(nx) * hx + Math.abs(ny) * hy + Math.abs(nz) * hz;
      if (farthest < (numbers[n + 3] ?? 0) * (1 + BEHIND)) return true;
    }
    return false;
  }

  /** Keeps those of some faces that are among the largest so far, by the solid angle that they take up, roughly. */
  private choose({ corners, normals }: Faces, from: number, to: number): void {
    const { chosen, eye, sizes } = this;
    for (let face = from; face < to; face += 1) {
      const at = face * MOST_CORNERS * 3;
      const n = face * 4;
      const x = (corners[at] ?? 0) - (eye[0] ?? 0);
      const y = (corners[at + 1] ?? 0) - (eye[1] ?? 0);
      const z = (corners[at + 2] ?? 0) - (eye[2] ?? 0);
      const d = (normals[n] ?? 0) * x + (normals[n + 1] ?? 0) * y + (normals[n + 2] ?? 0) * z;
      // A face that the lens all but touches hides only beyond the lens's own tolerance.
      if (!(d < -2 * HIT_TOLERANCE * (normals[n + 3] ?? 0))) continue;
      const far2 = x * x + y * y + z * z;
      const size = -d / (far2 * Math.sqrt(far2));
      if (this.count < MOST) this.least = this.count++;
      else if (size <= (sizes[this.least] ?? 0)) continue;
      chosen[this.least] = face;
      sizes[this.least] = size;
      if (this.count < MOST) continue;
      let least = 0;
      for (let one = 1; one < MOST; one += 1) if ((sizes[one] ?? 0) < (sizes[least] ?? 0)) least = one;
      this.least = least;
    }
  }

  private write({ corners, normals, sides }: Faces, face: number, at: number): void {
    const { eye, numbers } = this;
    const count = sides[face] ?? 0;
    const base = at * STRIDE;
    const q = (corner: number, axis: number) =>
      (corners[face * MOST_CORNERS * 3 + (corner % count) * 3 + axis] ?? 0) - (eye[axis] ?? 0);
    this.sides[at] = count;
    for (let k = 0; k < count; k += 1) {
      const [x0, y0, z0] = [q(k, 0), q(k, 1), q(k, 2)];
      const [x1, y1, z1] = [q(k + 1, 0), q(k + 1, 1), q(k + 1, 2)];
      // The same sides as a shadow's: Q' × Q.
      numbers[base + k * 3] = y1 * z0 - z1 * y0;
      numbers[base + k * 3 + 1] = z1 * x0 - x1 * z0;
      numbers[base + k * 3 + 2] = x1 * y0 - y1 * x0;
    }
    const n = base + MOST_CORNERS * 3;
    let along = 0;
    for (let axis = 0; axis < 3; axis += 1) {
      numbers[n + axis] = normals[face * 4 + axis] ?? 0;
      along += (normals[face * 4 + axis] ?? 0) * q(0, axis);
    }
    numbers[n + 3] = along;
  }
}
