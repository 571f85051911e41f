import type { Solid } from './solid.ts';

/**
 * The cut of a solid by the level plane at height `z`: segments x1, y1, x2, y2 …, the solid on their left.
 * Segments join end to end, bit by bit, into closed loops. Corners exactly at `z` count as below it, so the cut
 * is that of a plane a hair above: crossing parity tells inside from outside whatever lies in the plane.
 */
export function sliceAt({ positions, triangles }: Solid, z: number): Float64Array {
  const segments: number[] = [];
  const up = (id: number): boolean => (positions[3 * id + 2] ?? 0) > z;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] ?? 0, triangles[t + 1] ?? 0, triangles[t + 2] ?? 0];
    const [aUp, bUp, cUp] = [up(a), up(b), up(c)];
    if (aUp === bUp && bUp === cUp) continue;
    // Turn the triangle so that its odd corner comes first.
    const [odd, next, last] = bUp === cUp ? [a, b, c] : cUp === aUp ? [b, c, a] : [c, a, b];
    const [x1, y1] = crossing(positions, odd, next, z);
    const [x2, y2] = crossing(positions, last, odd, z);
    if (x1 === x2 && y1 === y2) continue;
    if (up(odd)) segments.push(x1, y1, x2, y2);
    else segments.push(x2, y2, x1, y1);
  }
  return Float64Array.from(segments);
}

/** Where an edge passes through the plane; the same bits from whichever side it is asked. */
function crossing(positions: Float64Array, a: number, b: number, z: number): readonly [number, number] {
  const [p, q] = a < b ? [a, b] : [b, a];
  const at = (id: number, axis: number): number => positions[3 * id + axis] ?? 0;
  const share = (z - at(p, 2)) / (at(q, 2) - at(p, 2));
  // A corner in the plane is met exactly, from every edge that ends in it.
  if (share <= 0) return [at(p, 0), at(p, 1)];
  if (share >= 1) return [at(q, 0), at(q, 1)];
  return [at(p, 0) + share * (at(q, 0) - at(p, 0)), at(p, 1) + share * (at(q, 1) - at(p, 1))];
}
