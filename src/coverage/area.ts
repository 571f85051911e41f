/** An area in m², good to ± `bound`, and how it was got. */
export interface Area {
  readonly value: number;
  readonly bound: number;
  readonly how: 'exact' | 'cells';
}

export const exactArea = (value: number): Area => ({ value, bound: 0, how: 'exact' });
