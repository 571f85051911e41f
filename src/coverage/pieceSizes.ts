/*
 * How fine the pieces of areaWhere.ts are made. Sizes are shares of a piece's distance from the lens.
 */

/** Pieces that a curve cuts are made no longer than this share of their distance from the lens. */
export const FINE = 0.15;
/** Pieces are made no longer than this share before their corners are trusted to tell. */
export const COARSE = 0.25;
/** Where two curves meet in a piece it is halved down to this share. */
export const FINEST = 0.004;
/** A piece whose curve takes more than this share of its chord squared is halved again. */
export const BENT = 0.03;
/**
 * Where two corners of an edge agree and their values sum to less than this, its middle is asked too: over an edge of the
 * share FINE no condition bends by more, and over a shorter one by less as its length squared.
 */
export const DIP = 0.4;
/** The greatest share of a piece's curved correction that was seen to be wrong, with room: see tests/coverage. */
export const CORRECTION_SLACK = 0.25;
/** Halvings of one triangle at most. */
export const DEEPEST = 60;
