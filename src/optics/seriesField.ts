import { SAME_POINT } from '../base/tolerance.ts';
import type { Camera } from './camera.ts';
import { greatestAngleRad } from './lens.ts';
import { PixelField } from './pixelField.ts';
import { axesOf, pixelPitch } from './projection.ts';
import { RoundLaw } from './roundLaw.ts';

/** With less of the law's slope left than this, squared, its root would lose places. */
const LEAST_SLOPE = 1e-4;

/**
 * What `PixelField` tells of a bent lens, by the law's series where that reaches and by the formula elsewhere: to rounding the
 * same, in half the time. Ask `at`, then read.
 */
export class SeriesField {
  /** As in `PixelField`. */
  density = 0;
  right = 0;
  below = 0;
  /** 2 (cos θ/2 − cos Θ/2) for the greatest angle Θ: of the sign of what is left of the angle, and about as much of it. */
  margin = 0;
  readonly halfWidth: number;
  readonly halfHeight: number;
  private readonly formula: PixelField;
  private readonly law: RoundLaw;
  private readonly axes: Float64Array;
  private readonly k2: number;
  private readonly across: number;
  private readonly down: number;
  private readonly greatest: number;

  /** @param angleRad up to which most targets lie off the axis */
  constructor(camera: Camera, angleRad: number) {
    const { right, down, forward } = axesOf(camera);
    const pitch = pixelPitch(camera);
    const greatestRad = greatestAngleRad(camera.k);
    this.formula = new PixelField(camera);
    this.law = new RoundLaw(camera.k, Math.min(angleRad, greatestRad));
    this.axes = Float64Array.from([...right, ...down, ...forward]);
    // What bends the slope: + for a tangent, − for a sine.
    this.k2 = camera.k * Math.abs(camera.k);
    this.across = camera.focalLength * pitch.across;
    this.down = camera.focalLength * pitch.down;
    this.greatest = Math.cos(greatestRad / 2);
    this.halfWidth = this.formula.halfWidth;
    this.halfHeight = this.formula.halfHeight;
  }

  /** Asks for a target, given from the lens along site axes, m. */
  at(dx: number, dy: number, dz: number): void {
    const { axes, law, k2 } = this;
    const r0 = axes[0] ?? 0;
    const r1 = axes[1] ?? 0;
    const d0 = axes[3] ?? 0;
    const d1 = axes[4] ?? 0;
    const f0 = axes[6] ?? 0;
    const f1 = axes[7] ?? 0;
    const x = r0 * dx + r1 * dy + (axes[2] ?? 0) * dz;
    const y = d0 * dx + d1 * dy + (axes[5] ?? 0) * dz;
    const z = f0 * dx + f1 * dy + (axes[8] ?? 0) * dz;
    const over2 = dx * dx + dy * dy;
    const off2 = x * x + y * y;
    const far = Math.sqrt(off2 + z * z);
    const cosine = z / far;
    this.margin = 2 * (Math.sqrt(Math.max(0, (1 + cosine) / 2)) - this.greatest);
    if (!(cosine >= law.least) || over2 < SAME_POINT * SAME_POINT || off2 < SAME_POINT * SAME_POINT) {
      this.plain(dx, dy, dz);
      return;
    }
    const round = law.at(cosine) / far;
    const bend = k2 * round * round * off2;
    if (bend < LEAST_SLOPE - 1) {
      this.plain(dx, dy, dz);
      return;
    }
    // A tangent's slope is 1 + tan², a sine's its cosine.
    const slope = bend > 0 ? 1 + bend : Math.sqrt(1 + bend);
    // The horizontal square to the bearing is square to the ray too, which leaves of the stretch outwards its part along the axis.
    const mx = r0 * dy - r1 * dx;
    const my = d0 * dy - d1 * dx;
    const outwards = slope * (f1 * dx - f0 * dy);
    const around = round * (x * my - y * mx);
    const du = this.across * (outwards * x - around * y);
    const dv = this.down * (outwards * y + around * x);
    this.density = Math.sqrt((du * du + dv * dv) / over2) / off2;
    this.right = round * x * this.across;
    this.below = round * y * this.down;
  }

  private plain(dx: number, dy: number, dz: number): void {
    const { formula } = this;
    formula.at(dx, dy, dz);
    this.density = formula.density;
    this.right = formula.right;
    this.below = formula.below;
  }
}
