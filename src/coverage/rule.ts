import { cos, sin, tan } from '../base/angle.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import type { Band } from './band.ts';
import type { FaceCap, Looks, Target } from './target.ts';

/** Limits on the angles, °, at which a face serves for a task. */
interface FaceLimit {
  readonly above: number;
  readonly side: number;
}

/** A face keeps its band; or falls because the camera looks down on it too steeply, or sees it too far from the side. */
export const [KEPT, TOO_STEEP, FROM_THE_SIDE] = [0, 1, 2];

/**
 * The highest band that a face may count for past each limit: past identify's it keeps the finest band below 250 px/m,
 * past recognise's the finest below 125 px/m. Common practice, no source; limits are settings of the plan.
 */
export function faceCapsOf(
  target: Target,
  bands: readonly Band[],
  limits: { readonly identify: FaceLimit; readonly recognise: FaceLimit },
): readonly FaceCap[] {
  if (target.kind !== 'face') return [];
  const below = (density: number) => bands.filter((band) => band.density < density).length;
  return [
    { ...limits.identify, band: below(250) },
    { ...limits.recognise, band: below(125) },
  ];
}

/** Judges a seen target: its band from density, range and, for a face, the angles from above and from the side. */
export class BandRule {
  /** px/m at which each band begins, ascending. */
  readonly densities: Float64Array;
  /** Tangent of each limit from above, cosine and sine of each from the side, and the highest band (index + 1) kept past it. */
  readonly slopes: Float64Array;
  readonly cosines: Float64Array;
  readonly sines: Float64Array;
  readonly kept: Uint8Array;
  readonly range2: number;
  /** Whether it is known which way the face looks. */
  readonly sided: boolean;
  /** Why the last target judged is below the band of its density: KEPT, TOO_STEEP or FROM_THE_SIDE. */
  lost = KEPT;
  /** Density, dx, dy and rise of the target that `bandHere` judges. */
  readonly here = new Float64Array(4);
  private readonly bearing: Vec2;
  /** The place that the face looks to, from the lens; null where it looks along `bearing`. */
  private readonly place: Vec2 | null;

  /**
   * @param looks which way the face looks, and the lens over ground from which it is judged; null: anywhere
   */
  constructor(
    bands: readonly Band[],
    caps: readonly FaceCap[],
    range: number,
    looks: { readonly to: Looks; readonly eye: Vec2 } | null = null,
  ) {
    this.densities = Float64Array.from(bands, ({ density }) => density);
    this.slopes = Float64Array.from(caps, ({ above }) => tan(above));
    this.cosines = Float64Array.from(caps, ({ side }) => cos(side));
    this.sines = Float64Array.from(caps, ({ side }) => sin(side));
    this.kept = Uint8Array.from(caps, ({ band }) => band);
    this.range2 = range * range;
    this.sided = looks !== null && caps.length > 0;
    const to = looks?.to;
    this.bearing = to?.kind === 'bearing' ? [sin(to.bearing), cos(to.bearing)] : [0, 1];
    this.place =
      looks !== null && to?.kind === 'place' ? [to.at[0] - looks.eye[0], to.at[1] - looks.eye[1]] : null;
  }

  /**
   * Index + 1 of the band of a seen target; 0 where it has too few pixels or lies past the range.
   * @param dx, dy from the lens to the target over ground, m
   * @param rise   how far the lens stands above the target, m
   */
  band(density: number, dx: number, dy: number, rise: number): number {
    const { here } = this;
    here[0] = density;
    here[1] = dx;
    here[2] = dy;
    here[3] = rise;
    return this.bandHere();
  }

  /** As `band`, of what stands in `here`: a call a cell would allocate its numbers. */
  bandHere(): number {
    this.lost = KEPT;
    const density = this.here[0] ?? 0;
    const dx = this.here[1] ?? 0;
    const dy = this.here[2] ?? 0;
    const rise = this.here[3] ?? 0;
    const over2 = dx * dx + dy * dy;
    if (over2 + rise * rise > this.range2) return 0;
    const { densities, slopes, cosines, kept } = this;
    let band = 0;
    while (band < densities.length && density >= (densities[band] ?? 0)) band += 1;
    if (slopes.length === 0 || band === 0) return band;
    const over = Math.sqrt(over2);
    for (let limit = 0; limit < slopes.length; limit += 1) {
      const cap = kept[limit] ?? 0;
      if (band <= cap || rise <= over * (slopes[limit] ?? 0)) continue;
      band = cap;
      this.lost = TOO_STEEP;
    }
    if (!this.sided) return band;
    for (let limit = 0; limit < cosines.length; limit += 1) {
      const cap = kept[limit] ?? 0;
      if (band <= cap || this.facing(limit, dx, dy) >= 0) continue;
      band = cap;
      this.lost = FROM_THE_SIDE;
    }
    return band;
  }

  /**
   * How well a face is turned to the camera for a limit from the side: ≥ 0 within it. Of two smooth functions, one for
   * either side of the face, both must be ≥ 0; beyond 90° one of them.
   * @param dx, dy from the lens to the target over ground, m
   */
  facing(limit: number, dx: number, dy: number): number {
    const [one, two] = [this.facingSide(limit, 1, dx, dy), this.facingSide(limit, -1, dx, dy)];
    return (this.cosines[limit] ?? 0) >= 0 ? Math.min(one, two) : Math.max(one, two);
  }

  /** How fast `facing` can change at most within a distance of a target: it is turned from l and d, of which l·d is made. */
  facingSlope(dx: number, dy: number, within: number): number {
    const { place } = this;
    if (place === null) return 1;
    return Math.hypot(place[0] - dx, place[1] - dy) + Math.hypot(dx, dy) + 2 * within;
  }

  /** One of the two functions of `facing`; 0 straight below the lens and at the place that the face looks to. */
  facingSide(limit: number, side: 1 | -1, dx: number, dy: number): number {
    const { place } = this;
    const lx = place === null ? this.bearing[0] : place[0] - dx;
    const ly = place === null ? this.bearing[1] : place[1] - dy;
    // With δ the angle from the camera to where the face looks: |l||d| sin(limit ∓ δ).
    const along = -(lx * dx + ly * dy);
    const across = ly * -dx - lx * -dy;
    return along * (this.sines[limit] ?? 0) - side * across * (this.cosines[limit] ?? 0);
  }
}

/** The rule by which a camera's targets are judged. */
export const ruleOf = (
  camera: Camera,
  target: Target,
  bands: readonly Band[],
  caps: readonly FaceCap[],
): BandRule =>
  new BandRule(
    bands,
    caps,
    camera.range,
    target.kind === 'face' && target.looks ? { to: target.looks, eye: [camera.eye[0], camera.eye[1]] } : null,
  );
