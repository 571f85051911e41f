import type { AskedFigures } from './askedFigures.ts';
import type { FixingFigures } from './fixingFigures.ts';
import type { ViewFigures } from './viewFigures.ts';

/** The figures of one caution. */
export type Figures = AskedFigures | ViewFigures | FixingFigures;

/** Those of one row. */
export type FiguresOf<R extends Figures['row']> = Extract<Figures, { readonly row: R }>;
