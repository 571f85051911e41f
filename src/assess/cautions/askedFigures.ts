/*
 * What each caution says in figures, by its row of the table: lengths m, angles °, shares 0 to 1, exposures ms. Names are as
 * the person calls the things; sentences are made of them in `draw/cautions`.
 */

interface Asked {
  /** Name of what must be seen. */
  readonly requirement: string;
}

interface FaceFromSide extends Asked {
  readonly row: 1;
  /** In plan, between where the face looks and the camera. */
  readonly angle: number;
  readonly limit: number;
}

interface FaceFromAbove extends Asked {
  readonly row: 2;
  readonly angle: number;
  readonly limit: number;
  /** No higher above the ground than this from where it stands. */
  readonly mostHeight: number;
}

interface PlateTooSmall extends Asked {
  readonly row: 3;
  /** Upright, px a character. */
  readonly pixels: number;
  readonly leastPixels: number;
  /** The greater of sideways and upright, off the plate's normal; null where it is not said which way the plate looks. */
  readonly angle: number | null;
  readonly mostAngle: number;
}

interface PlateAndMore extends Asked {
  readonly row: 4;
  readonly other: string;
}

interface Smeared extends Asked {
  readonly row: 5;
  readonly when: 'day' | 'night';
  readonly of: 'face' | 'plate';
  readonly millimetres: number;
  readonly exposure: number;
  /** The exposure is not stated, and taken to be this. */
  readonly taken: boolean;
  readonly speed: number;
}

interface FewPictures extends Asked {
  readonly row: 6;
  readonly pictures: number;
  readonly seconds: number;
  readonly speed: number;
}

interface OutOfFocus extends Asked {
  readonly row: 7;
  readonly focus: number;
  readonly distance: number;
  readonly near: number;
  /** Null: as far as there is. */
  readonly far: number | null;
}

interface EndOfRange {
  readonly row: 8;
  readonly end: 'shortest' | 'longest';
  readonly focalLength: number;
  readonly limit: number;
}

interface AngleOfOther {
  readonly row: 9;
  /** Of the picture that is recorded. */
  readonly mode: string;
  readonly why: 'shape' | 'crop' | 'rotated' | 'stabilised' | 'other';
  /** How much of its width may be lost, share. */
  readonly lost: number;
}

interface LesserStream extends Asked {
  readonly row: 10;
  readonly mode: string;
  readonly density: number;
  /** Name of the band; null: below all. */
  readonly band: string | null;
  readonly wanted: string;
  readonly recorded: boolean;
}

interface Upright extends Asked {
  readonly row: 11;
  /** Height by width of what is asked, in the picture. */
  readonly ratio: number;
  /** How much more of the picture would lie on it. */
  readonly more: number;
}

/** Figures of rows about what must be seen, and the lens and pictures that see it. */
export type AskedFigures =
  | FaceFromSide
  | FaceFromAbove
  | PlateTooSmall
  | PlateAndMore
  | Smeared
  | FewPictures
  | OutOfFocus
  | EndOfRange
  | AngleOfOther
  | LesserStream
  | Upright;
