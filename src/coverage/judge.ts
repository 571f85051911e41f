import type { TargetBox } from './casters.ts';

/** What a camera can make of a target: out of frame, inside a solid, screened; from SEEN_AT on seen, at band label − SEEN_AT (0: none). */
export const [OUT, WITHIN, SCREENED_BY, SEEN_AT] = [0, 1, 2, 3];

/** What must be asked in parts of a box. */
export interface Asked {
  readonly framed: number;
  /** NOWHERE or EVERYWHERE where it is known for the whole box. */
  readonly within: number;
  readonly faces: readonly number[];
  readonly solids: readonly number[];
  readonly screens: readonly number[];
  readonly sheets: readonly (readonly number[])[];
}

/** The labels that targets of a box can have, never too few, and what must be asked in its parts. */
export interface Judged {
  readonly labels: readonly number[];
  readonly left: Asked;
}

/** Tells what the targets of a box can be. Boxes are in coordinates of a plane and the height above it. */
export interface Judge {
  /** What must be asked to begin with. */
  readonly all: Asked;
  judge(box: TargetBox, asked: Asked): Judged;
}
