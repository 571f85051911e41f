import type { Footing } from './footing.ts';
import type { HalfPlanes } from './halfPlanes.ts';

/** What rounding may lift a box over a plane by, as a share of its size and m. */
const SLACK = 1e-9;

/**
 * The pyramid from a lens over a window of the target plane, for boxes: a half-plane a·p + b·q + k ≥ 0 of the window is the
 * half-space a·p + b·q + k·w ≥ 0 through the lens, with w the share of the way to the plane.
 */
export class Pyramid {
  /** Three numbers a half-space: a, b, k as in the window. */
  readonly sides: Float64Array;
  /** The half-spaces that the last box did not lie in wholly: what lies in the box must be held against these. */
  readonly open: Int32Array;
  opened = 0;
  /** Least and greatest share w of the last box. */
  nearest = 0;
  farthest = 0;
  /** The same half-spaces, then w itself, as normals in the site frame. */
  private readonly normals: Float64Array;
  private readonly eye: Float64Array;

  constructor({ eye, plane, delta }: Footing, window: HalfPlanes) {
    const { u, v, normal } = plane;
    this.eye = Float64Array.from(eye);
    this.sides = Float64Array.from(window.flat());
    this.open = new Int32Array(window.length);
    this.normals = Float64Array.from(
      [...window, [0, 0, 1] as const].flatMap(([a, b, k]) =>
        ([0, 1, 2] as const).map((axis) => a * u[axis] + b * v[axis] + (k / delta) * normal[axis]),
      ),
    );
  }

  /** Whether a box (least, then greatest x, y, z, from `at` on) lies outside one half-space, beyond the plane or behind the lens. */
  misses(box: Float64Array, at: number): boolean {
    const { eye, normals, open } = this;
    const [x0, y0, z0] = [box[at] ?? 0, box[at + 1] ?? 0, box[at + 2] ?? 0];
    const [x1, y1, z1] = [box[at + 3] ?? 0, box[at + 4] ?? 0, box[at + 5] ?? 0];
    const cx = (x0 + x1) / 2 - (eye[0] ?? 0);
    const cy = (y0 + y1) / 2 - (eye[1] ?? 0);
    const cz = (z0 + z1) / 2 - (eye[2] ?? 0);
    const hx = (x1 - x0) / 2;
    const hy = (y1 - y0) / 2;
    const hz = (z1 - z0) / 2;
    const last = normals.length - 3;
    let opened = 0;
    for (let n = 0; n <= last; n += 3) {
      const nx = normals[n] ?? 0;
      const ny = normals[n + 1] ?? 0;
      const nz = normals[n + 2] ?? 0;
      const middle = nx * cx + ny * cy + nz * cz;
      const half = Math.abs(nx) * hx + Math.abs(ny) * hy + Math.abs(nz) * hz;
      if (middle + half < -SLACK * (1 + half)) return true;
      if (n === last) {
        this.nearest = middle - half;
        this.farthest = middle + half;
      } else if (middle - half < SLACK * (1 + half)) open[opened++] = n;
    }
    this.opened = opened;
    return this.nearest > 1 + SLACK;
  }
}
