import type { Vec2 } from '../../base/vector.ts';
import { frontPlane } from './bodies.ts';
import { tint, tintAt, type Shape } from './shapes.ts';
import type { Subject } from './subject.ts';

/*
 * A number plate of nowhere: characters in the size that a public regulation asks for (height 79, width 50, stroke 14,
 * space 11, between groups 33 mm), drawn as strokes of our own on a plate of 520 × 111 mm. Nobody is given such a number.
 */

/** Height of a character, m. */
export const CHARACTER = 0.079;

const [WIDE, STROKE, SPACE, GROUP] = [0.05, 0.014, 0.011, 0.033];
const [PLATE_WIDE, PLATE_HIGH] = [0.52, 0.111];
/** Half the field of the picture, m, and of what of the car is in it around the plate. */
const HALF = [0.29, 0.105] as const;
const PANEL = [0.29, 0.085] as const;

const CAR = tint('#4A5560', 0.2);
const WHITE = tint('#F4F2EA', 0.8);
const BLACK = tint('#16181C', 0.02);

/** Strokes of a character through the corners of its middle line: left, middle and right; bottom, middle and top. */
const [L, M, R, B, C, T] = [0.007, 0.025, 0.043, 0.007, 0.0395, 0.072];
const STROKES: Readonly<Record<string, readonly (readonly Vec2[])[]>> = {
  S: [
    [
      [R, T],
      [L, T],
      [L, C],
      [R, C],
      [R, B],
      [L, B],
    ],
  ],
  F: [
    [
      [R, T],
      [L, T],
      [L, B],
    ],
    [
      [L, C],
      [0.036, C],
    ],
  ],
  T: [
    [
      [L, T],
      [R, T],
    ],
    [
      [M, T],
      [M, B],
    ],
  ],
  '0': [
    [
      [L, B],
      [L, T],
      [R, T],
      [R, B],
      [L, B],
    ],
  ],
  '4': [
    [
      [0.034, B],
      [0.034, T],
      [L, 0.026],
      [R, 0.026],
    ],
  ],
  '8': [
    [
      [L, B],
      [L, T],
      [R, T],
      [R, B],
      [L, B],
    ],
    [
      [L, C],
      [R, C],
    ],
  ],
  '2': [
    [
      [L, T],
      [R, T],
      [R, C],
      [L, C],
      [L, B],
      [R, B],
    ],
  ],
};

/** What stands on it. */
const NUMBER = 'SFT 0482';

const DRAWN: readonly Shape[] = [
  {
    kind: 'box',
    from: [-PLATE_WIDE / 2, -PLATE_HIGH / 2],
    to: [PLATE_WIDE / 2, PLATE_HIGH / 2],
    tint: WHITE,
  },
  ...characters(),
];

function characters(): readonly Shape[] {
  const placed: { readonly sign: string; readonly left: number }[] = [];
  let right = 0;
  for (const sign of NUMBER) {
    if (sign === ' ') right += GROUP - SPACE;
    else {
      placed.push({ sign, left: right });
      right += WIDE + SPACE;
    }
  }
  const middle = (right - SPACE) / 2;
  return placed.flatMap(({ sign, left }) =>
    (STROKES[sign] ?? []).map((through): Shape => ({
      kind: 'stroke',
      through: through.map(([x, z]) => [x + left - middle, z - CHARACTER / 2]),
      wide: STROKE,
      tint: BLACK,
    })),
  );
}

/** A plate on the front of a car, whose middle is at the height that plates are asked for. */
export const plateSubject: Subject = {
  half: HALF,
  flat: true,
  retroreflects: true,
  meet: (from, along, met) => {
    const s = frontPlane(0, from, along);
    if (s === Infinity) return false;
    // Read by who looks at it: its right is x to the left of the car.
    const x = -((from[0] ?? 0) + s * (along[0] ?? 0));
    const z = (from[2] ?? 0) + s * (along[2] ?? 0);
    if (Math.abs(x) > PANEL[0] || Math.abs(z) > PANEL[1]) return false;
    met.tint = tintAt(DRAWN, x, z) ?? CAR;
    met.up = 0;
    met.facing = -(along[1] ?? 0) / Math.hypot(along[0] ?? 0, along[1] ?? 0, along[2] ?? 0);
    met.shaded = false;
    return true;
  },
};
