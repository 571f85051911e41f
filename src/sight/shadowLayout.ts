import { MOST_CORNERS } from './faceSize.ts';
import type { Sectors } from './sectors.ts';

/** Most half-planes that one shadow can have: its edges, the cut at the target, the cut at the lens. */
const MOST_SIDES = MOST_CORNERS + 2;
/** Numbers a shadow: its half-planes, then depth s = a·p + b·q + k, then its box: least p, q, greatest p, q. */
export const STRIDE = MOST_SIDES * 3 + 7;
export const DEPTH = MOST_SIDES * 3;
export const BOX = DEPTH + 3;

/**
 * What front faces throw on a plane. Shadow i holds the targets p, q for which all of its half-planes are ≥ 0; there
 * its face stands 1/s of the way from lens to target, so the largest s is nearest the lens.
 */
export interface Shadows {
  readonly count: number;
  readonly numbers: Float64Array;
  /** Half-planes of each shadow. */
  readonly sides: Uint8Array;
  /** Bit j: side j can be an outline, since no front face of the same solid goes on beyond it. */
  readonly outline: Uint8Array;
  /** Index of the solid, and of the first facet of the face that throws it; −1 where none does. */
  readonly solid: Int32Array;
  readonly facet: Int32Array;
  /** What some of these shadows are sure to cover; null where nobody looked. */
  readonly dark: Sectors | null;
}

export const NO_SHADOWS: Shadows = {
  count: 0,
  numbers: new Float64Array(0),
  sides: new Uint8Array(0),
  outline: new Uint8Array(0),
  solid: new Int32Array(0),
  facet: new Int32Array(0),
  dark: null,
};
