import type { Spot } from '../sheet.ts';

/** The convex outline of some points, counter-clockwise where y runs up (monotone chain). */
export function hullOf(points: readonly Spot[]): Spot[] {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const half = (ordered: readonly Spot[]): Spot[] => {
    const chain: Spot[] = [];
    for (const point of ordered) {
      for (;;) {
        const [a, b] = [chain.at(-2), chain.at(-1)];
        if (!a || !b || (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x) > 0) break;
        chain.pop();
      }
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}
