/** Numbers that look random and are the same in every run with the same seed. */
export interface Chance {
  readonly seed: number;
  /** From 0 up to, without, 1. */
  next(): number;
  /** From low up to, without, high. */
  between(low: number, high: number): number;
  /** A whole number from low to high, both included. */
  whole(low: number, high: number): number;
  /** One of the list. Throws RangeError when it is empty. */
  pick<T>(list: readonly T[]): T;
}

/** A Weyl sequence through a 32-bit mixing function: good enough to choose test cases. */
export const chanceFrom = (seed: number): Chance => {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
  const between = (low: number, high: number): number => low + (high - low) * next();
  const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));
  return {
    seed,
    next,
    between,
    whole,
    pick: (list) => {
      const index = whole(0, list.length - 1);
      const chosen = list[index];
      if (chosen === undefined && !(index in list)) throw new RangeError('pick: the list is empty');
      return chosen as (typeof list)[number];
    },
  };
};

/** Whether `npm run thorough` runs, rather than `npm test`. */
export const isThorough = process.env['SOFFIT_THOROUGH'] === '1';

/** How many trials to make: a sample in `npm test`, the whole in `npm run thorough`. */
export const trials = (sample: number, whole: number): number => (isThorough ? whole : sample);
