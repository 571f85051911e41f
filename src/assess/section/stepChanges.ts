/** A stretch on which a step function has one value. */
export interface Constant {
  readonly from: number;
  readonly to: number;
  readonly value: number;
}

/** How near a change is found, m. */
const NEAR = 1e-9;

/**
 * Stretches on which a step function is constant, by sampling and halving. Ends of the whole graze what bounds it: it is
 * asked just within.
 * @param step the greatest gap between samples; a stretch within one gap is missed
 */
export function constantBetween(
  of: (t: number) => number,
  from: number,
  to: number,
  step: number,
): Constant[] {
  const found: Constant[] = [];
  const inset = Math.min(1e-9, (to - from) / 4);
  const samples = Math.max(2, Math.ceil((to - from) / step));
  const [low, high] = [from + inset, to - inset];
  let start = from;
  let before = low;
  let value = of(low);
  for (let k = 1; k <= samples; k += 1) {
    const here = k === samples ? high : low + ((high - low) * k) / samples;
    const there = of(here);
    // Several changes between two samples are taken one by one.
    while (there !== value) {
      const [edge, next, beyond] = firstChange(of, before, here, value);
      found.push({ from: start, to: edge, value });
      [start, before, value] = [edge, beyond, next];
    }
    before = here;
  }
  found.push({ from: start, to, value });
  return found;
}

/** A change from a value, the value just past it, and where that was asked. */
function firstChange(
  of: (t: number) => number,
  from: number,
  to: number,
  value: number,
): [edge: number, next: number, beyond: number] {
  let [low, high, past] = [from, to, of(to)];
  while (high - low > NEAR) {
    const middle = (low + high) / 2;
    const there = of(middle);
    if (there === value) low = middle;
    else [high, past] = [middle, there];
  }
  return [(low + high) / 2, past, high];
}
