/** An area in m², good to ± `bound`, and how it was got: from outlines and curves, or from cells. */
export interface Area {
  readonly value: number;
  readonly bound: number;
  readonly how: 'exact' | 'cells';
}
