import { tint, type Shape } from './shapes.ts';

/*
 * A face of nobody, drawn by us as data: as it is seen from the front, in metres from its middle, x to the right of whose face
 * it is.
 */

export const SKIN = tint('#D9A784', 0.62);
export const NECK = tint('#C79470', 0.56);
export const HAIR = tint('#3A2A22', 0.16);
export const COAT = tint('#33547A', 0.3);
export const CAP = tint('#7B3B32', 0.28);
export const PEAK = tint('#5E2A24', 0.22);

const BROW = tint('#33241C', 0.14);
const WHITE = tint('#F2EEE6', 0.7);
const IRIS = tint('#3B4A36', 0.1);
const RIM = tint('#26211F', 0.08);
const LIPS = tint('#A85A50', 0.45);
const MOUTH = tint('#6E3430', 0.2);
const SHADE = tint('#B98560', 0.5);
const MOLE = tint('#5A3A28', 0.25);

/** Middle of an eye, from the middle of the face: across and up, m. */
export const EYE = [0.032, 0.018] as const;

const eye = (side: 1 | -1): readonly Shape[] => [
  { kind: 'ellipse', at: [side * EYE[0], EYE[1]], half: [0.0145, 0.0078], tint: WHITE },
  { kind: 'ellipse', at: [side * EYE[0], EYE[1]], half: [0.0068, 0.0068], tint: IRIS },
  {
    kind: 'stroke',
    through: [
      [side * 0.016, 0.038],
      [side * 0.034, 0.044],
      [side * 0.05, 0.036],
    ],
    wide: 0.0075,
    tint: BROW,
  },
  { kind: 'ring', at: [side * 0.0325, 0.016], radius: 0.0225, wide: 0.0034, tint: RIM },
  {
    kind: 'stroke',
    through: [
      [side * 0.055, 0.019],
      [side * 0.074, 0.022],
    ],
    wide: 0.0034,
    tint: RIM,
  },
  { kind: 'ellipse', at: [side * 0.0085, -0.039], half: [0.0045, 0.0028], tint: MOUTH },
];

/** Features of the front of the head. */
export const FACE: readonly Shape[] = [
  { kind: 'ellipse', at: [0, -0.092], half: [0.02, 0.006], tint: SHADE },
  ...eye(1),
  ...eye(-1),
  {
    kind: 'stroke',
    through: [
      [-0.011, 0.019],
      [0.011, 0.019],
    ],
    wide: 0.0034,
    tint: RIM,
  },
  {
    kind: 'stroke',
    through: [
      [-0.026, -0.066],
      [0, -0.0695],
      [0.026, -0.066],
    ],
    wide: 0.0125,
    tint: LIPS,
  },
  {
    kind: 'stroke',
    through: [
      [-0.025, -0.066],
      [0, -0.0685],
      [0.025, -0.066],
    ],
    wide: 0.0024,
    tint: MOUTH,
  },
  { kind: 'ellipse', at: [-0.034, -0.046], half: [0.0036, 0.0036], tint: MOLE },
];
