import { dot, type Vec3 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import { greatestAngleRad, lawRad } from '../optics/lens.ts';
import { axesOf, pixelPitch, type Axes } from '../optics/projection.ts';
import { frameSides } from '../sight/frame.ts';

/** Whether something holds nowhere, in part or everywhere. */
export const [NOWHERE, PERHAPS, EVERYWHERE] = [0, 1, 2];

/** So near to straight behind the lens nothing is told, rad. */
const BEHIND = 0.05;
/** Below this angle off the axis, rad, quotients of small numbers are taken from their series. */
const SMALL = 1e-3;
/** Rounding, as a share of a direction. */
const ROUNDING = 1e-12;

/** What a camera makes of all targets in a ball, never too narrow. */
export class ImageBounds {
  /** Least and greatest px/m of the last ball asked for. */
  least = 0;
  most = 0;
  private readonly camera: Camera;
  private readonly axes: Axes;
  private readonly sides: readonly Vec3[];
  private readonly greatestRad: number;
  private readonly finest: number;
  private readonly coarsest: number;

  constructor(camera: Camera) {
    const pitch = pixelPitch(camera);
    this.camera = camera;
    this.axes = axesOf(camera);
    this.sides = camera.k === 1 ? frameSides(camera) : [];
    this.greatestRad = greatestAngleRad(camera.k);
    this.finest = camera.focalLength * Math.max(pitch.across, pitch.down);
    this.coarsest = camera.focalLength * Math.min(pitch.across, pitch.down);
  }

  /** How much of a ball lies in the frame. @param radius m */
  framed(middle: Vec3, radius: number): number {
    return this.camera.k === 1 ? this.flat(middle, radius) : this.bent(middle, radius);
  }

  private flat(middle: Vec3, radius: number): number {
    let found = EVERYWHERE;
    const room = radius + ROUNDING * Math.sqrt(dot(middle, middle));
    for (const side of this.sides) {
      const value = dot(side, middle);
      const reach = room * Math.sqrt(dot(side, side));
      if (value + reach < 0) return NOWHERE;
      if (value - reach < 0) found = PERHAPS;
    }
    return found;
  }

  private bent(middle: Vec3, radius: number): number {
    const { axes, camera, greatestRad } = this;
    const { k, focalLength, sensor } = camera;
    const far = Math.hypot(...middle);
    if (radius >= far) return PERHAPS;
    const spread = Math.asin(radius / far) + ROUNDING;
    const [x, y, z] = [dot(axes.right, middle), dot(axes.down, middle), dot(axes.forward, middle)];
    const off = Math.hypot(x, y);
    const theta = Math.atan2(off, z);
    const [low, high] = [Math.max(0, theta - spread), theta + spread];
    if (low > greatestRad) return NOWHERE;
    if (high > Math.PI - BEHIND || (k > 0 && high >= greatestRad - BEHIND)) return PERHAPS;
    // An image moves no faster than the greater stretch, along the radius or round it, on the way of the ray.
    const slope = k > 0 ? 1 / Math.cos(k * high) ** 2 : 1;
    const shift = spread * Math.max(slope, roundStretch(high, k)) * focalLength;
    const gain = off < 1e-300 ? 0 : (focalLength * lawRad(theta, k)) / off;
    const [u, v] = [Math.abs(gain * x), Math.abs(gain * y)];
    if (u - shift > sensor.width / 2 || v - shift > sensor.height / 2) return NOWHERE;
    const isWithin = u + shift <= sensor.width / 2 && v + shift <= sensor.height / 2;
    return isWithin && high <= greatestRad ? EVERYWHERE : PERHAPS;
  }

  /**
   * Leaves the least and greatest density of a ball behind. With m the horizontal square to the bearing, which is square to
   * the ray too, density² · L² / f² = B² − (B² − A²) / sin²θ · (m · forward)², A and B the stretches along and round the radius.
   */
  bound(middle: Vec3, radius: number): void {
    const { axes, camera, greatestRad } = this;
    const { forward } = axes;
    const { k } = camera;
    this.least = 0;
    this.most = Infinity;
    const far = Math.hypot(...middle);
    if (radius >= far) return;
    const spread = Math.asin(radius / far) + ROUNDING;
    const theta = Math.atan2(
      Math.hypot(dot(axes.right, middle), dot(axes.down, middle)),
      dot(forward, middle),
    );
    const [low, high] = [Math.max(0, theta - spread), theta + spread];
    if (high > Math.PI - BEHIND || (k > 0 && high >= greatestRad - 1e-9)) return;
    const over = Math.hypot(middle[0], middle[1]);
    const level = Math.hypot(forward[0], forward[1]);
    let [mu0, mu1] = [0, level];
    if (radius < over) {
      const mu = Math.abs(forward[0] * middle[1] - forward[1] * middle[0]) / over;
      const turn = Math.asin(radius / over) * level + ROUNDING;
      [mu0, mu1] = [Math.max(0, mu - turn), Math.min(level, mu + turn)];
    }
    const [b0, b1] = [roundStretch(low, k), roundStretch(high, k)];
    const [c0, c1] = [between(low, k), between(high, k)];
    const [cLow, cHigh] = [Math.min(c0, c1), Math.max(c0, c1)];
    const square = (c: number, isMost: boolean): number => c * (c > 0 === isMost ? mu1 : mu0) ** 2;
    const less = Math.max(0, b0 * b0 - square(cHigh, true));
    const more = Math.max(0, b1 * b1 - square(cLow, false));
    this.least = (this.coarsest * Math.sqrt(less) * (1 - 1e-9)) / (far + radius);
    this.most = (this.finest * Math.sqrt(more) * (1 + 1e-9)) / (far - radius);
  }
}

/** g(θ)/sin θ: rises with θ. */
function roundStretch(theta: number, k: number): number {
  return theta < SMALL
    ? 1 + theta * theta * ((k * Math.abs(k)) / 3 + 1 / 6)
    : lawRad(theta, k) / Math.sin(theta);
}

/** (B² − A²)/sin²θ: falls or rises steadily with θ. */
function between(theta: number, k: number): number {
  const at = Math.max(theta, 0.01);
  const slope = k > 0 ? 1 / Math.cos(k * at) ** 2 : Math.cos(k * at);
  return (roundStretch(at, k) ** 2 - slope * slope) / Math.sin(at) ** 2;
}
