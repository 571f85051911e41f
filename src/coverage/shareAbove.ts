/**
 * The share of a triangle in which several linear functions are all ≥ 0.
 * @param values of each function at the three corners
 */
export function shareAbove(values: readonly (readonly [number, number, number])[]): number {
  // The triangle in its own coordinates s, t ≥ 0, s + t ≤ 1, cut by one function after the other.
  let ring: readonly (readonly [s: number, t: number])[] = [
    [0, 0],
    [1, 0],
    [0, 1],
  ];
  for (const [first, second, third] of values) {
    const value = ([s, t]: readonly [number, number]) => first * (1 - s - t) + second * s + third * t;
    ring = ring.flatMap((from, at) => {
      const to = ring[(at + 1) % ring.length] ?? from;
      const [f, g] = [value(from), value(to)];
      const kept = f >= 0 ? [from] : [];
      const share = f / (f - g);
      if (f >= 0 === g >= 0) return kept;
      return [...kept, [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])] as const];
    });
  }
  let twice = 0;
  ring.forEach((from, at) => {
    const to = ring[(at + 1) % ring.length] ?? from;
    twice += from[0] * to[1] - to[0] * from[1];
  });
  return Math.abs(twice);
}
