import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import type { Conditions } from './curve.ts';
import type { BandRule } from './rule.ts';

/** Conditions of one camera on a horizontal plane, and which of them must hold together. */
export interface ConditionSets {
  readonly of: Conditions;
  readonly count: number;
  /** The frame; empty for a rectilinear lens, whose outline is cut by the frame already. */
  readonly framed: readonly number[];
  /** One a band: seen ground that reaches it or better. */
  readonly atLeast: readonly (readonly number[])[];
}

/** The four sides of the frame, and the end of the lens law. */
const SIDES = 5;

/**
 * Where a camera's seen ground counts, as smooth conditions: range, density for each band, each limit from above, and the
 * frame of a bent lens.
 * @param height of the plane above z = 0, m
 */
export function conditionSets(camera: Camera, height: number, rule: BandRule): ConditionSets {
  const field = new PixelField(camera);
  const drop = height - camera.eye[2];
  const bands = rule.densities.length;
  const limits = rule.slopes.length;
  const sides = camera.k === 1 ? 0 : SIDES;
  const side = 1 + bands + limits;
  const framed = Array.from({ length: sides }, (_, at) => side + at);
  return {
    count: side + sides,
    framed,
    atLeast: Array.from({ length: bands }, (_, band) => [
      0,
      1 + band,
      ...Array.from({ length: limits }, (_l, limit) => limit)
        .filter((limit) => (rule.kept[limit] ?? 0) <= band)
        .map((limit) => 1 + bands + limit),
      ...framed,
    ]),
    of: (p, q, values, at) => {
      field.at(p, q, drop);
      const over2 = p * p + q * q;
      values[at] = 1 - (over2 + drop * drop) / rule.range2;
      for (let band = 0; band < bands; band += 1)
        values[at + 1 + band] = field.density / (rule.densities[band] ?? 1) - 1;
      for (let limit = 0; limit < limits; limit += 1)
        values[at + 1 + bands + limit] =
          drop >= 0 ? 1 : (Math.sqrt(over2) * (rule.slopes[limit] ?? 0)) / -drop - 1;
      if (sides === 0) return;
      values[at + side] = 1 - field.right / field.halfWidth;
      values[at + side + 1] = 1 + field.right / field.halfWidth;
      values[at + side + 2] = 1 - field.below / field.halfHeight;
      values[at + side + 3] = 1 + field.below / field.halfHeight;
      values[at + side + 4] = field.marginRad;
    },
  };
}
