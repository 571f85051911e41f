import { expect } from 'vitest';

/** A number to so many decimals, within an expected value; typed as one, which the matcher of the library is not. */
export const closeTo = (value: number, decimals: number): unknown => expect.closeTo(value, decimals);
