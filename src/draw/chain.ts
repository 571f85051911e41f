/** Joins segments between numbered points into chains; a closed one repeats its first number. */
export function chainSegments(segments: readonly (readonly [number, number])[]): number[][] {
  const at = new Map<number, number[]>();
  segments.forEach(([a, b], s) => {
    for (const end of [a, b]) {
      const there = at.get(end);
      if (there) there.push(s);
      else at.set(end, [s]);
    }
  });
  const used = new Uint8Array(segments.length);
  const walk = (from: number): number[] => {
    const chain = [from];
    let here = from;
    for (;;) {
      const s: number | undefined = at.get(here)?.find((segment) => used[segment] === 0);
      const segment = s === undefined ? undefined : segments[s];
      if (s === undefined || !segment) return chain;
      used[s] = 1;
      here = segment[0] === here ? segment[1] : segment[0];
      chain.push(here);
    }
  };
  const chains: number[][] = [];
  // Open chains start at their ends; what is left afterwards runs in circles.
  for (const [point, there] of at)
    if (there.length === 1 && there.some((s) => used[s] === 0)) chains.push(walk(point));
  for (const [point, there] of at) if (there.some((s) => used[s] === 0)) chains.push(walk(point));
  return chains;
}
