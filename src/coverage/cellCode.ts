import { HIDDEN, SCREENED } from './state.ts';

/*
 * What one camera makes of a cell, in one number: its state, why a face falls below the band of its density, and the band of
 * what is covered (index + 1) or the solid that hides or screens.
 */

export const codeOf = (state: number, lost: number, value: number): number =>
  (value << 5) | (lost << 3) | state;

export const stateIn = (code: number): number => code & 7;
export const lostIn = (code: number): number => (code >> 3) & 3;

/** The band of a covered cell; 0 of others. */
export const bandIn = (code: number): number => (isBehind(code) ? 0 : code >> 5);

/** The solid that hides or screens a cell; −1 where none does. */
export const hiderIn = (code: number): number => (isBehind(code) ? code >> 5 : -1);

const isBehind = (code: number): boolean => stateIn(code) === HIDDEN || stateIn(code) === SCREENED;

/** The code of a cell among other solids. @param index of a solid among them */
export const codeAmong = (code: number, index: (solid: number) => number): number =>
  isBehind(code) ? codeOf(stateIn(code), lostIn(code), index(hiderIn(code))) : code;
