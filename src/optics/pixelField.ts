import { SAME_POINT } from '../base/tolerance.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Camera } from './camera.ts';
import { densityAt } from './density.ts';
import { greatestAngleRad } from './lens.ts';
import { axesOf, pixelPitch } from './projection.ts';

/** Pixels off the picture for a target without an image. */
const FAR_OUT = 1e7;

/**
 * Frame test and horizontal density at many targets of one camera: the same formulae as `imageFromSite` and `densityAt`,
 * without allocation. Ask `at`, then read `density`.
 */
export class PixelField {
  /** px/m at the last target asked for; 0 where the law gives none, and beyond its greatest angle not to be used. */
  density = 0;
  /** Pixels right of and below the middle of the picture; far out where the law ends without a limit. */
  right = 0;
  below = 0;
  /** How far within the lens's greatest angle the target lies, rad; negative where it has no image. */
  marginRad = 0;
  readonly halfWidth: number;
  readonly halfHeight: number;
  private readonly camera: Camera;
  private readonly r0: number;
  private readonly r1: number;
  private readonly r2: number;
  private readonly d0: number;
  private readonly d1: number;
  private readonly d2: number;
  private readonly f0: number;
  private readonly f1: number;
  private readonly f2: number;
  private readonly across: number;
  private readonly down: number;
  private readonly greatestRad: number;

  constructor(camera: Camera) {
    const { right, down, forward } = axesOf(camera);
    const pitch = pixelPitch(camera);
    this.camera = camera;
    [this.r0, this.r1, this.r2] = right;
    [this.d0, this.d1, this.d2] = down;
    [this.f0, this.f1, this.f2] = forward;
    this.across = camera.focalLength * pitch.across;
    this.down = camera.focalLength * pitch.down;
    this.halfWidth = camera.frame.width / 2;
    this.halfHeight = camera.frame.height / 2;
    this.greatestRad = greatestAngleRad(camera.k);
  }

  /** Whether a target, given from the lens along site axes (m), lies in the frame; leaves its density behind. */
  at(dx: number, dy: number, dz: number): boolean {
    const { r0, r1, r2, d0, d1, d2, f0, f1, f2 } = this;
    const x = r0 * dx + r1 * dy + r2 * dz;
    const y = d0 * dx + d1 * dy + d2 * dz;
    const z = f0 * dx + f1 * dy + f2 * dz;
    const over = Math.sqrt(dx * dx + dy * dy);
    if (over < SAME_POINT) return this.straightBelow(dx, dy, dz, x, y, z);
    // m = (dy, −dx, 0) / over: the horizontal square to the bearing, in the camera's axes.
    const mx = (r0 * dy - r1 * dx) / over;
    const my = (d0 * dy - d1 * dx) / over;
    const mz = (f0 * dy - f1 * dx) / over;
    return this.camera.k === 1 ? this.flat(x, y, z, mx, my, mz) : this.bent(x, y, z, mx, my, mz);
  }

  /**
   * Densities along a row of targets: from (dx, dy, dz) in `count` steps, into `into` from `at` on. A bent lens leaves 0
   * outside its frame; targets of a rectilinear one must lie in front of the lens, as all in its frame do.
   * @param step from one target to the next along site axes, m; along x the row takes half the time
   */
  fillRow(
    dx: number,
    dy: number,
    dz: number,
    step: Vec3,
    count: number,
    into: Float32Array,
    at: number,
  ): void {
    const bent = this.camera.k !== 1;
    if (step[1] !== 0 || step[2] !== 0) this.anyRow(dx, dy, dz, step, count, into, at);
    else if (bent) this.bentRow(dx, dy, dz, step[0], count, into, at);
    else this.flatRow(dx, dy, dz, step[0], count, into, at);
  }

  /**
   * px/m at a target for a displacement along a direction, such as a wall's own horizontal.
   * @param along unit vector in the site frame
   * @returns     0 where the lens has no image of the target
   */
  along(dx: number, dy: number, dz: number, along: Vec3): number {
    const { r0, r1, r2, d0, d1, d2, f0, f1, f2 } = this;
    const x = r0 * dx + r1 * dy + r2 * dz;
    const y = d0 * dx + d1 * dy + d2 * dz;
    const z = f0 * dx + f1 * dy + f2 * dz;
    const mx = r0 * along[0] + r1 * along[1] + r2 * along[2];
    const my = d0 * along[0] + d1 * along[1] + d2 * along[2];
    const mz = f0 * along[0] + f1 * along[1] + f2 * along[2];
    if (this.camera.k === 1) this.flat(x, y, z, mx, my, mz);
    else this.bent(x, y, z, mx, my, mz);
    return this.density;
  }

  private anyRow(
    dx: number,
    dy: number,
    dz: number,
    step: Vec3,
    count: number,
    into: Float32Array,
    at: number,
  ): void {
    const bent = this.camera.k !== 1;
    for (let i = 0; i < count; i += 1) {
      const framed = this.at(dx + i * step[0], dy + i * step[1], dz + i * step[2]);
      into[at + i] = framed || !bent ? this.density : 0;
    }
  }

  private flatRow(
    dx: number,
    dy: number,
    dz: number,
    step: number,
    count: number,
    into: Float32Array,
    at: number,
  ): void {
    const { r0, r1, r2, d0, d1, d2, f0, f1, f2, across, down } = this;
    const x0 = r1 * dy + r2 * dz;
    const y0 = d1 * dy + d2 * dz;
    const z0 = f1 * dy + f2 * dz;
    for (let i = 0; i < count; i += 1) {
      const east = dx + i * step;
      const over2 = east * east + dy * dy;
      if (over2 < SAME_POINT * SAME_POINT) {
        this.at(east, dy, dz);
        into[at + i] = this.density;
        continue;
      }
      const x = x0 + r0 * east;
      const y = y0 + d0 * east;
      const z = z0 + f0 * east;
      const mz = f0 * dy - f1 * east;
      const a = across * ((r0 * dy - r1 * east) * z - x * mz);
      const b = down * ((d0 * dy - d1 * east) * z - y * mz);
      into[at + i] = Math.sqrt((a * a + b * b) / over2) / (z * z);
    }
  }

  private bentRow(
    dx: number,
    dy: number,
    dz: number,
    step: number,
    count: number,
    into: Float32Array,
    at: number,
  ): void {
    const { r0, r1, r2, d0, d1, d2, f0, f1, f2, across, down, halfWidth, halfHeight, greatestRad } = this;
    const { k } = this.camera;
    const x0 = r1 * dy + r2 * dz;
    const y0 = d1 * dy + d2 * dz;
    const z0 = f1 * dy + f2 * dz;
    for (let i = 0; i < count; i += 1) {
      const east = dx + i * step;
      const over2 = east * east + dy * dy;
      const x = x0 + r0 * east;
      const y = y0 + d0 * east;
      const z = z0 + f0 * east;
      const off2 = x * x + y * y;
      if (over2 < SAME_POINT * SAME_POINT || off2 < SAME_POINT * SAME_POINT) {
        into[at + i] = this.at(east, dy, dz) ? this.density : 0;
        continue;
      }
      const off = Math.sqrt(off2);
      const thetaRad = Math.atan2(off, z);
      if (k >= 0.5 ? thetaRad >= greatestRad : thetaRad > greatestRad) {
        into[at + i] = 0;
        continue;
      }
      const bent = k > 0 ? Math.tan(k * thetaRad) : k < 0 ? Math.sin(k * thetaRad) : 0;
      const round = (k === 0 ? thetaRad : bent / k) / off;
      if (Math.abs(x) * round * across > halfWidth || Math.abs(y) * round * down > halfHeight) {
        into[at + i] = 0;
        continue;
      }
      const slope = k > 0 ? 1 + bent * bent : k < 0 ? Math.sqrt(1 - bent * bent) : 1;
      const mx = r0 * dy - r1 * east;
      const my = d0 * dy - d1 * east;
      const mz = f0 * dy - f1 * east;
      const outwards = (slope * ((z * (x * mx + y * my)) / off2 - mz)) / (off2 + z * z);
      const around = (round * (x * my - y * mx)) / off2;
      const du = across * (outwards * x - around * y);
      const dv = down * (outwards * y + around * x);
      into[at + i] = Math.sqrt((du * du + dv * dv) / over2);
    }
  }

  private flat(x: number, y: number, z: number, mx: number, my: number, mz: number): boolean {
    if (!(z > 0)) {
      this.noImage(x, y, -1);
      return false;
    }
    const a = this.across * (mx * z - x * mz);
    const b = this.down * (my * z - y * mz);
    this.density = Math.sqrt(a * a + b * b) / (z * z);
    this.right = (x * this.across) / z;
    this.below = (y * this.down) / z;
    this.marginRad = 1;
    return Math.abs(x) * this.across <= this.halfWidth * z && Math.abs(y) * this.down <= this.halfHeight * z;
  }

  private noImage(x: number, y: number, marginRad: number): void {
    this.density = 0;
    this.right = x >= 0 ? FAR_OUT : -FAR_OUT;
    this.below = y >= 0 ? FAR_OUT : -FAR_OUT;
    this.marginRad = marginRad;
  }

  private bent(x: number, y: number, z: number, mx: number, my: number, mz: number): boolean {
    const { k } = this.camera;
    const off = Math.sqrt(x * x + y * y);
    const thetaRad = Math.atan2(off, z);
    this.marginRad = this.greatestRad - thetaRad;
    // Past a greatest angle at which the law stays finite it goes on smoothly, so that only the margin turns there.
    if ((off === 0 && z <= 0) || (k >= 0.5 && this.marginRad <= 0)) {
      this.noImage(x, y, Math.min(this.marginRad, -1e-12));
      return false;
    }
    const turn = k * thetaRad;
    const law = k > 0 ? Math.tan(turn) / k : k === 0 ? thetaRad : Math.sin(turn) / k;
    const slope = k > 0 ? 1 + (law * k) ** 2 : k === 0 ? 1 : Math.cos(turn);
    const ex = off === 0 ? 1 : x / off;
    const ey = off === 0 ? 0 : y / off;
    const round = off === 0 ? 1 / z : law / off;
    const outwards = (slope * (z * (ex * mx + ey * my) - off * mz)) / (off * off + z * z);
    const around = round * (ex * my - ey * mx);
    const du = this.across * (outwards * ex - around * ey);
    const dv = this.down * (outwards * ey + around * ex);
    this.density = Math.sqrt(du * du + dv * dv);
    const gain = off === 0 ? 0 : law / off;
    this.right = gain * x * this.across;
    this.below = gain * y * this.down;
    return (
      this.marginRad >= 0 && Math.abs(this.right) <= this.halfWidth && Math.abs(this.below) <= this.halfHeight
    );
  }

  /** The bearing is undefined: the least density over all horizontals, from the plain formula. */
  private straightBelow(dx: number, dy: number, dz: number, x: number, y: number, z: number): boolean {
    const { eye } = this.camera;
    const target: Vec3 = [eye[0] + dx, eye[1] + dy, eye[2] + dz];
    const framed = this.camera.k === 1 ? this.flat(x, y, z, 0, 0, 0) : this.bent(x, y, z, 0, 0, 0);
    this.density = densityAt(this.camera, target)?.horizontal ?? 0;
    return framed;
  }
}
