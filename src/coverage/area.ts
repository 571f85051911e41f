/**
 * An area in m², good to ± `bound`, and how it was got: `exact` from outlines and curves; `between` bounds that surely hold
 * (brackets.ts); or from `cells`, counted by their centres, where the bound is a guess from those at edges and is not printed.
 */
export interface Area {
  readonly value: number;
  readonly bound: number;
  readonly how: 'exact' | 'between' | 'cells';
}

export const NO_AREA: Area = { value: 0, bound: 0, how: 'exact' };

/** Nothing, as counted from cells. */
export const NO_CELLS: Area = { value: 0, bound: 0, how: 'cells' };

const WORST = ['cells', 'between', 'exact'] as const;

const worse = (one: Area, two: Area): Area['how'] =>
  WORST.find((how) => one.how === how || two.how === how) ?? 'exact';

export const plus = (one: Area, two: Area): Area => ({
  value: one.value + two.value,
  bound: one.bound + two.bound,
  how: worse(one, two),
});

/** What is left of an area; never below 0. */
export const less = (one: Area, two: Area): Area => ({
  value: Math.max(0, one.value - two.value),
  bound: one.bound + two.bound,
  how: worse(one, two),
});
