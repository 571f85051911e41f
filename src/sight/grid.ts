import type { Plane } from '../base/plane.ts';

/** Square cells on a plane: cell (i, j) has its centre at a = left + (i + ½)·cell, b = bottom + (j + ½)·cell; index j·columns + i. */
export interface Grid {
  readonly plane: Plane;
  readonly left: number;
  readonly bottom: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}
