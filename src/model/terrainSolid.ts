import type { Solid } from './solid.ts';

/** The id of the solid of uneven ground. */
export const GROUND = 'ground';

/** How far below its lowest point the ground is closed, m. */
const DEPTH = 1;

/** Corners and triangles of the ground, counter-clockwise from above, and the corners around it in that sense. */
export interface Surface {
  /** x, y, z of each corner. */
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  /** Corner ids; the outline over ground is convex, and straight on at some of them. */
  readonly ring: readonly number[];
}

/** Heights between which a surface lies. */
export function heightsOf(positions: Float64Array): { readonly least: number; readonly most: number } {
  let [least, most] = [Infinity, -Infinity];
  for (let at = 2; at < positions.length; at += 3) {
    least = Math.min(least, positions[at] ?? 0);
    most = Math.max(most, positions[at] ?? 0);
  }
  return { least, most };
}

/** The solid between a surface and a level DEPTH below its lowest point. Its first triangles are the surface's. */
export function solidBelow({ positions, triangles, ring }: Surface): Solid {
  const corners = positions.length / 3;
  const bottom = heightsOf(positions).least - DEPTH;
  const all = new Float64Array(positions.length + 3 * (ring.length + 1));
  all.set(positions);
  let [x, y] = [0, 0];
  ring.forEach((id, at) => {
    const [cx, cy] = [positions[id * 3] ?? 0, positions[id * 3 + 1] ?? 0];
    all.set([cx, cy, bottom], (corners + at) * 3);
    x += cx / ring.length;
    y += cy / ring.length;
  });
  const middle = corners + ring.length;
  all.set([x, y, bottom], middle * 3);
  const closed = new Uint32Array(triangles.length + ring.length * 9);
  closed.set(triangles);
  let to = triangles.length;
  ring.forEach((a, at) => {
    const next = (at + 1) % ring.length;
    const b = ring[next] ?? a;
    const [below, beside] = [corners + at, corners + next];
    closed.set([below, beside, b, below, b, a, beside, below, middle], to);
    to += 9;
  });
  return {
    id: GROUND,
    structure: GROUND,
    name: 'the ground',
    passage: 'solid',
    positions: all,
    triangles: closed,
  };
}
