import earcut from 'earcut';
import type { Vec2 } from '../base/vector.ts';
import type { Window } from './sight.ts';

/** A ring (counter-clockwise) as convex polygons that tile it: itself where it is convex, else triangles. */
export function convexParts(ring: readonly Vec2[]): readonly Window[] {
  const turns = ring.map((corner, at) => {
    const next = ring[(at + 1) % ring.length] ?? corner;
    const after = ring[(at + 2) % ring.length] ?? corner;
    return (next[0] - corner[0]) * (after[1] - next[1]) - (next[1] - corner[1]) * (after[0] - next[0]);
  });
  if (turns.every((turn) => turn >= 0)) return [ring];
  const corners = earcut(ring.flatMap(([a, b]) => [a, b]));
  const parts: Window[] = [];
  for (let at = 0; at + 2 < corners.length; at += 3) {
    const [one, two, three] = [
      ring[corners[at] ?? 0],
      ring[corners[at + 1] ?? 0],
      ring[corners[at + 2] ?? 0],
    ];
    if (one === undefined || two === undefined || three === undefined) continue;
    const twice = (two[0] - one[0]) * (three[1] - one[1]) - (two[1] - one[1]) * (three[0] - one[0]);
    if (twice !== 0) parts.push(twice > 0 ? [one, two, three] : [one, three, two]);
  }
  return parts;
}
