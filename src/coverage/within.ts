import type { Window } from '../sight/sight.ts';
import type { Area } from './area.ts';

/** Where areas are counted: one number a cell, 1 within, and the same ground as convex polygons. */
export interface Within {
  readonly mask: Uint8Array;
  /** All of it, and what of it lies inside solids. */
  readonly total: Area;
  readonly inside: Area;
  /** Triangles of the plane inside solids; null where only cells can tell. */
  readonly cut: Float64Array | null;
  /** Triangles of the plane inside glass, which hides nothing but holds no target. */
  readonly glazed: Float64Array;
  readonly parts: readonly Window[];
  /** The parts are the whole window of the sight. */
  readonly whole: boolean;
}

/** The mask of where areas are counted; null where that is everywhere. */
export const countedMask = ({ mask, whole }: Within): Uint8Array | null => (whole ? null : mask);
