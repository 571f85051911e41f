import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import { SeriesField } from '../optics/seriesField.ts';
import type { Footing } from '../sight/footing.ts';
import { frameAngle } from '../sight/frame.ts';
import type { Conditions } from './curve.ts';
import { curveSources } from './curveSources.ts';
import type { LensOver } from './nearestLens.ts';
import type { BandRule } from './rule.ts';

/** A smooth function of a target, given from the lens along site axes (m): ≥ 0 where it is lit. */
export type Lit = (dx: number, dy: number, dz: number) => number;

/** A set of conditions whose area is added (1) or taken off (−1). */
export interface SignedSet {
  readonly sign: 1 | -1;
  readonly set: readonly number[];
}

/** What can light a part of the ground, as smooth functions: one of the lamps is enough, or all that bounds the camera's own. */
export interface Lights {
  readonly lamps: readonly Lit[];
  /** Null where its own light does not reach, or it has none. */
  readonly own: readonly Lit[] | null;
}

/** Conditions of one camera on a plane, in coordinates relative to the foot, and which of them must hold together. */
export interface ConditionSets {
  readonly of: Conditions;
  readonly count: number;
  /** Where their curves come from, relative to the foot. */
  readonly sources: readonly LensOver[];
  /** The frame; empty for a rectilinear lens, whose outline is cut by the frame already. */
  readonly framed: readonly number[];
  /** Whose signed areas sum to where a set holds in enough light: the set itself by day. */
  readonly inLight: (set: readonly number[]) => readonly SignedSet[];
  /** One a band: seen ground that reaches it or better. */
  readonly atLeast: readonly (readonly number[])[];
  /** Whose signed areas sum to where a limit of the face lowers the band: any limit, and one from the side. */
  readonly lowered: readonly SignedSet[];
  readonly loweredFromSide: readonly SignedSet[];
}

/** How much farther off the axis than its frame a bent lens is asked, as a factor. */
const BEYOND = 1.1;

/** The four sides of the frame, and the end of the lens law. */
const SIDES = 5;

/**
 * Where a camera's seen ground counts, as smooth conditions: range, density for each band, each limit from above and from
 * the side, the frame of a bent lens, and light at night.
 */
export function conditionSets(
  camera: Camera,
  footing: Footing,
  rule: BandRule,
  lights: Lights | null = null,
): ConditionSets {
  const { plane, delta } = footing;
  // A piece may reach a little beyond the frame.
  const bent = camera.k === 1 ? null : new SeriesField(camera, frameAngle(camera) * BEYOND);
  const field = bent ?? new PixelField(camera);
  const { u, v, normal } = plane;
  const bands = rule.densities.length;
  const limits = rule.slopes.length;
  const sideFrom = 1 + bands + limits;
  const frameFrom = sideFrom + (rule.sided ? 2 * limits : 0);
  const sides = camera.k === 1 ? 0 : SIDES;
  const lightFrom = frameFrom + sides;
  const [lamps, own] = [lights?.lamps ?? [], lights?.own ?? []];
  const framed = Array.from({ length: sides }, (_, at) => frameFrom + at);
  return {
    count: lightFrom + lamps.length + own.length,
    sources: curveSources(camera, footing),
    framed,
    inLight: lights === null ? (set) => [{ sign: 1, set }] : inLight(lights, lightFrom),
    ...setsOf(rule, framed),
    of: (p, q, values, at) => {
      const dx = p * u[0] + q * v[0] + delta * normal[0];
      const dy = p * u[1] + q * v[1] + delta * normal[1];
      const dz = p * u[2] + q * v[2] + delta * normal[2];
      field.at(dx, dy, dz);
      const over2 = dx * dx + dy * dy;
      values[at] = 1 - (over2 + dz * dz) / rule.range2;
      for (let band = 0; band < bands; band += 1)
        values[at + 1 + band] = field.density / (rule.densities[band] ?? 1) - 1;
      for (let limit = 0; limit < limits; limit += 1)
        values[at + 1 + bands + limit] =
          dz >= 0 ? 1 : (Math.sqrt(over2) * (rule.slopes[limit] ?? 0)) / -dz - 1;
      if (rule.sided)
        for (let limit = 0; limit < limits; limit += 1) {
          // Beyond 90° one of the two functions is enough, which is no smooth pair: their greater one counts.
          const narrow = (rule.cosines[limit] ?? 0) >= 0;
          const to = at + sideFrom + 2 * limit;
          values[to] = narrow ? rule.facingSide(limit, 1, dx, dy) : rule.facing(limit, dx, dy);
          values[to + 1] = narrow ? rule.facingSide(limit, -1, dx, dy) : 1;
        }
      if (bent !== null) {
        values[at + frameFrom] = 1 - bent.right / bent.halfWidth;
        values[at + frameFrom + 1] = 1 + bent.right / bent.halfWidth;
        values[at + frameFrom + 2] = 1 - bent.below / bent.halfHeight;
        values[at + frameFrom + 3] = 1 + bent.below / bent.halfHeight;
        values[at + frameFrom + 4] = bent.margin;
      }
      // Of a lamp it is asked where it is dark.
      for (let one = 0; one < lamps.length; one += 1)
        values[at + lightFrom + one] = -(lamps[one]?.(dx, dy, dz) ?? 0);
      for (let one = 0; one < own.length; one += 1)
        values[at + lightFrom + lamps.length + one] = own[one]?.(dx, dy, dz) ?? 0;
    },
  };
}

/**
 * Lit is what is not dark of every lamp, and of that what the camera's own light reaches: smooth functions each, where the
 * greatest of them would have kinks.
 */
const inLight = ({ lamps, own }: Lights, from: number): ConditionSets['inLight'] => {
  const dark = lamps.map((_, lamp) => from + lamp);
  const reached = own?.map((_, part) => from + lamps.length + part) ?? null;
  return (set) => {
    if (lamps.length === 0) return reached === null ? [] : [{ sign: 1, set: [...set, ...reached] }];
    const byLamps: SignedSet[] = [
      { sign: 1, set },
      { sign: -1, set: [...set, ...dark] },
    ];
    return reached === null ? byLamps : [...byLamps, { sign: 1, set: [...set, ...dark, ...reached] }];
  };
};

/** Which conditions make up each set, by their order in `of`. */
function setsOf(
  rule: BandRule,
  framed: readonly number[],
): Pick<ConditionSets, 'atLeast' | 'lowered' | 'loweredFromSide'> {
  const bands = rule.densities.length;
  const limits = rule.slopes.length;
  const dense = (band: number) => [0, 1 + band, ...framed];
  /** Limits that a target at a band must keep. */
  const held = (band: number) =>
    Array.from({ length: limits }, (_, limit) => limit).filter((limit) => (rule.kept[limit] ?? 0) <= band);
  const above = (band: number) => held(band).map((limit) => 1 + bands + limit);
  const beside = (band: number) =>
    rule.sided
      ? held(band).flatMap((limit) => {
          const at = 1 + bands + limits + 2 * limit;
          return [at, at + 1];
        })
      : [];
  const all = Array.from({ length: bands }, (_, band) => band);
  const limited = all.filter((band) => held(band).length > 0);
  // Of the ground with just this band before the limits, what does not keep them: by inclusion and exclusion.
  const falls = (before: (band: number) => readonly number[], kept: (band: number) => readonly number[]) =>
    limited.flatMap((band): SignedSet[] => {
      const here = before(band);
      const next = band + 1 < bands ? before(band + 1) : null;
      const within: SignedSet[] = [
        { sign: 1, set: here },
        { sign: -1, set: [...here, ...kept(band)] },
      ];
      if (next === null) return within;
      return [...within, { sign: -1, set: next }, { sign: 1, set: [...next, ...kept(band)] }];
    });
  return {
    atLeast: all.map((band) => [...dense(band), ...above(band), ...beside(band)]),
    lowered: falls(dense, (band) => [...above(band), ...beside(band)]),
    loweredFromSide: rule.sided ? falls((band) => [...dense(band), ...above(band)], beside) : [],
  };
}
