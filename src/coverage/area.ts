/** An area in m², good to ± `bound`, and how it was got: from outlines and curves, or from cells. */
export interface Area {
  readonly value: number;
  readonly bound: number;
  readonly how: 'exact' | 'cells';
}

export const NO_AREA: Area = { value: 0, bound: 0, how: 'exact' };

/** Nothing, as counted from cells. */
export const NO_CELLS: Area = { value: 0, bound: 0, how: 'cells' };

const worse = (one: Area, two: Area): Area['how'] =>
  one.how === 'cells' || two.how === 'cells' ? 'cells' : 'exact';

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
