/** The states of a cell for a camera, in the order in which they are decided (design: sight). */
export const STATES = [
  'inside',
  'out of frame',
  'hidden',
  'screened',
  'too dark',
  'too coarse',
  'covered',
] as const;
export type State = (typeof STATES)[number];

export const INSIDE = 0;
export const OUT_OF_FRAME = 1;
export const HIDDEN = 2;
export const SCREENED = 3;
export const TOO_DARK = 4;
export const TOO_COARSE = 5;
export const COVERED = 6;
