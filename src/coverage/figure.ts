import type { Area } from './area.ts';
import type { Cells } from './coverage.ts';
import { COVERED, TOO_COARSE } from './state.ts';
import { areaOf, tally } from './tally.ts';

/** The parts of a standing person that are asked for, from the ground up. */
export const PARTS = ['feet', 'waist', 'face'] as const;
type Part = (typeof PARTS)[number];

/** Waist height of a stature: 0.60 of it. Source: means of ANSUR II, men 1056.5 of 1756.2 mm, women 980.2 of 1628.5 mm. */
export const WAIST = 0.6;

/** What a camera sees of a person standing in each cell. */
export interface Figure {
  /** One a cell: bit 0 feet, bit 1 waist, bit 2 face. */
  readonly seen: Uint8Array;
  /** Where each part is seen, whatever of the others, and where all of them are. */
  readonly byPart: Readonly<Record<Part, Area>>;
  readonly whole: Area;
  /** Where something is seen but not all. */
  readonly inPart: Area;
}

const ALL = 2 ** PARTS.length - 1;

/**
 * Puts together what a camera sees at the heights of a person's parts: a part is seen where it lies in the frame with nothing
 * in the way, and lit at night, at any density. From cells, with their ±.
 * @param levels cells of one grid layout, one a part in the order of PARTS
 * @param mask   1 where areas are counted
 */
export function figureOf(levels: readonly Cells[], mask: Uint8Array): Figure {
  const [first] = levels;
  if (first === undefined || levels.length !== PARTS.length)
    throw new RangeError(`a figure has ${PARTS.length} parts, got ${levels.length}`);
  const { grid } = first;
  const seen = new Uint8Array(first.state.length);
  levels.forEach(({ state }, part) => {
    for (let cell = 0; cell < seen.length; cell += 1)
      if (state[cell] === COVERED || state[cell] === TOO_COARSE) seen[cell] = (seen[cell] ?? 0) | (1 << part);
  });
  const areaWhere = (holds: (bits: number) => boolean): Area =>
    areaOf(
      tally(
        grid,
        seen.map((bits) => (holds(bits) ? 1 : 0)),
        mask,
        2,
      ),
      1,
      grid,
    );
  const partArea = (part: number): Area => areaWhere((bits) => (bits & (1 << part)) !== 0);
  return {
    seen,
    byPart: { feet: partArea(0), waist: partArea(1), face: partArea(2) },
    whole: areaWhere((bits) => bits === ALL),
    inPart: areaWhere((bits) => bits > 0 && bits < ALL),
  };
}
