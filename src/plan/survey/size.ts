import type { Got } from '../../model/structure.ts';

/** A size of the plan, or a few that are got together. */
export interface Size {
  readonly thing:
    | { readonly kind: 'structure' | 'patch' | 'lamp'; readonly id: string }
    | { readonly kind: 'opening' | 'service'; readonly id: string; readonly on: string }
    | { readonly kind: 'ground' };
  readonly name: string;
  readonly what: string;
  /** In words, given how a length is written. */
  value(length: (metres: number) => string): string;
  readonly got: Got;
  readonly uncertainty: number;
  readonly touches: readonly string[];
}

/** A guessed size may be off by so much of itself; a mapped one by so much, m: as `Got` has it. */
const GUESSED_SHARE = 0.2;
const TAPED = 0.05;
const MAPPED = { plan: 0.5, height: 1 } as const;

/** A guessed place may be off by so much, m: twice what a map may be; no source. */
const GUESSED_PLACE = 1;

/**
 * How far off a size may be, m.
 * @param direction over ground or upwards, which maps know differently well
 */
export function offBy(got: Got, size: number, direction: 'plan' | 'height'): number {
  if (got === 'measured') return TAPED;
  return got === 'mapped' ? MAPPED[direction] : GUESSED_SHARE * Math.abs(size);
}

/** How far off a place over ground may be, m. */
export const placeOffBy = (got: Got): number => (got === 'guessed' ? GUESSED_PLACE : offBy(got, 0, 'plan'));

/** A guessed level (of a base, of the ground) may be off by so much, m: it may be 0, of which there is no share; no source. */
const GUESSED_LEVEL = 0.5;

/** How far off a level above z = 0 may be, m. */
export const levelOffBy = (got: Got): number => (got === 'guessed' ? GUESSED_LEVEL : offBy(got, 0, 'height'));
