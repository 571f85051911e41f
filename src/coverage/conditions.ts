import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import type { Conditions } from './areaWhere.ts';
import type { BandRule } from './rule.ts';

interface ConditionSet {
  readonly of: Conditions;
  readonly count: number;
}

/** In the frame of a lens that is not rectilinear: its four sides, and the end of its law. */
const FRAME = 5;

/**
 * The frame of a bent lens on a horizontal plane at a height, as smooth conditions; none for a rectilinear one, whose
 * outline is cut by the frame already.
 */
export function frameConditions(camera: Camera, height: number): ConditionSet {
  const field = new PixelField(camera);
  const drop = height - camera.eye[2];
  return {
    count: FRAME,
    of: (p, q, values) => {
      field.at(p, q, drop);
      putFrame(field, values, 0);
    },
  };
}

/** Seen ground that reaches a band (index + 1) or better: density, range and the limits from above that the band must keep. */
export function bandConditions(camera: Camera, height: number, rule: BandRule, band: number): ConditionSet {
  const field = new PixelField(camera);
  const drop = height - camera.eye[2];
  const least = rule.bands[band - 1]?.density ?? 0;
  const framed = camera.k === 1 ? 0 : FRAME;
  const slopes = rule.slopes.filter((cap) => cap.band < band).map(({ slope }) => slope);
  return {
    count: 2 + slopes.length + framed,
    of: (p, q, values) => {
      field.at(p, q, drop);
      values[0] = field.density / least - 1;
      const over2 = p * p + q * q;
      values[1] = 1 - (over2 + drop * drop) / rule.range2;
      for (let at = 0; at < slopes.length; at += 1)
        values[2 + at] = drop >= 0 ? 1 : (Math.sqrt(over2) * (slopes[at] ?? 0)) / -drop - 1;
      if (framed > 0) putFrame(field, values, 2 + slopes.length);
    },
  };
}

function putFrame(field: PixelField, values: Float64Array, at: number): void {
  values[at] = 1 - field.right / field.halfWidth;
  values[at + 1] = 1 + field.right / field.halfWidth;
  values[at + 2] = 1 - field.below / field.halfHeight;
  values[at + 3] = 1 + field.below / field.halfHeight;
  values[at + 4] = field.marginRad;
}
