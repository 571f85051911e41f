import {
  distanceFor,
  focalLengthFor,
  quickSum,
  type NoAnswer,
  type Sum,
  type SumAsked,
} from '../../optics/quickSum.ts';

/** What is worked out from the rest. */
export type Unknown = 'density' | 'distance' | 'lens';

/** A sum, and what was to be found for it. */
export type Solved =
  | { readonly ok: true; readonly sum: Sum }
  | { readonly ok: false; readonly words: string };

/**
 * The sum with its unknown found.
 * @param wanted px/m that distance or lens are to give
 */
export function solved(asked: SumAsked, unknown: Unknown, wanted: number): Solved {
  switch (unknown) {
    case 'density':
      return { ok: true, sum: quickSum(asked) };
    case 'distance': {
      const distance = distanceFor(asked, wanted);
      if (typeof distance === 'string') return { ok: false, words: WHY[distance] };
      return { ok: true, sum: quickSum({ ...asked, distance }) };
    }
    case 'lens': {
      const focalLength = focalLengthFor(asked, wanted);
      if (focalLength === null)
        return { ok: false, words: 'Tilted so, no lens that draws straight has the target before it.' };
      return { ok: true, sum: quickSum({ ...asked, lens: { focalLength, hfov: null } }) };
    }
  }
}

const WHY: Readonly<Record<NoAnswer, string>> = {
  'never so many':
    'From this height there are never so many, not even close below. Lower the lens, or take a longer one.',
  'always more': 'There are more than that as far as anyone would ask.',
};
