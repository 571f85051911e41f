import type { Footing } from './footing.ts';
import { HALF_TURN, turnFrom, turnOf } from './sectors.ts';

/** Where a box lies around the axis from a lens to its foot, and where on the plane it can throw its shadow. */
export class BoxAround {
  /** Rays, as `turnOf` counts, between which the box lies; `end` may go on past the last. All round where it holds the axis. */
  start = 0;
  end = 0;
  /** Least and greatest distance from the axis, m. */
  nearest = 0;
  farthest = 0;
  /** Least and greatest distance from the foot of what it can hide, m. */
  shadowNear = 0;
  shadowFar = 0;
  private readonly axes: Float64Array;
  private readonly radius: number;
  private readonly corners = new Float64Array(16);

  /** @param radius greatest distance from the foot to a target that is asked for, m */
  constructor({ eye, plane, delta }: Footing, radius: number) {
    this.axes = Float64Array.from([...eye, ...plane.u, ...plane.v, ...plane.normal, delta]);
    this.radius = radius;
  }

  /** Takes a box: least, then greatest x, y, z, from `at` on. */
  take(box: Float64Array, at: number): void {
    const { axes, corners } = this;
    let [farthest, low, high] = [0, Infinity, -Infinity];
    let [middleP, middleQ] = [0, 0];
    for (let corner = 0; corner < 8; corner += 1) {
      const x = (box[at + ((corner & 1) === 0 ? 0 : 3)] ?? 0) - (axes[0] ?? 0);
      const y = (box[at + ((corner & 2) === 0 ? 1 : 4)] ?? 0) - (axes[1] ?? 0);
      const z = (box[at + ((corner & 4) === 0 ? 2 : 5)] ?? 0) - (axes[2] ?? 0);
      const p = x * (axes[3] ?? 0) + y * (axes[4] ?? 0) + z * (axes[5] ?? 0);
      const q = x * (axes[6] ?? 0) + y * (axes[7] ?? 0) + z * (axes[8] ?? 0);
      const w = (x * (axes[9] ?? 0) + y * (axes[10] ?? 0) + z * (axes[11] ?? 0)) / (axes[12] ?? 1);
      corners[corner * 2] = p;
      corners[corner * 2 + 1] = q;
      middleP += p / 8;
      middleQ += q / 8;
      const far2 = p * p + q * q;
      if (far2 > farthest) farthest = far2;
      if (w < low) low = w;
      if (w > high) high = w;
    }
    this.farthest = Math.sqrt(farthest);
    this.around(middleP, middleQ);
    // A target is the foot of a ray prolonged by 1/w from where it meets the box.
    this.shadowNear = high > 1 ? this.nearest : this.nearest / high;
    this.shadowFar = low > 0 ? Math.min(this.radius, this.farthest / low) : this.radius;
  }

  /** Rays and the least distance, from the middle of the corners. */
  private around(middleP: number, middleQ: number): void {
    const { corners } = this;
    const size = Math.hypot(middleP, middleQ);
    const middle = turnOf(middleP, middleQ);
    let [nearest, least, most] = [Infinity, 0, 0];
    for (let corner = 0; corner < 8; corner += 1) {
      const p = corners[corner * 2] ?? 0;
      const q = corners[corner * 2 + 1] ?? 0;
      const along = (p * middleP + q * middleQ) / size;
      if (along < nearest) nearest = along;
      const off = turnFrom(middle, p, q);
      if (off < least) least = off;
      if (off > most) most = off;
    }
    // A box whose middle lies on the axis has no direction, and holds it.
    if (size > 0 && nearest > 0) {
      this.nearest = nearest;
      this.start = middle + least;
      this.end = middle + most;
      if (this.start < 0) {
        this.start += 2 * HALF_TURN;
        this.end += 2 * HALF_TURN;
      }
    } else {
      this.nearest = 0;
      this.start = 0;
      this.end = 2 * HALF_TURN - 1;
    }
  }
}
