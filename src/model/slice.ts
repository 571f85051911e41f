import type { Plane } from '../base/plane.ts';
import type { Solid } from './solid.ts';

/**
 * The cut of a solid by a plane: segments a1, b1, a2, b2 … in coordinates of the plane, the solid on their left.
 * Segments join end to end, bit by bit, into closed loops. Corners exactly in the plane count as below it, so the cut
 * is that of a plane a hair above: crossing parity tells inside from outside whatever lies in the plane.
 * @param above how far above the plane it is cut, m: for a plane that is itself a face, whose corners are not in it to the
 *              last bit
 */
export function sliceAt({ positions, triangles }: Solid, plane: Plane, above = 0): Float64Array {
  const local = inPlane(positions, plane, above);
  const segments: number[] = [];
  const up = (id: number): boolean => (local[3 * id + 2] ?? 0) > 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] ?? 0, triangles[t + 1] ?? 0, triangles[t + 2] ?? 0];
    const [aUp, bUp, cUp] = [up(a), up(b), up(c)];
    if (aUp === bUp && bUp === cUp) continue;
    // Turn the triangle so that its odd corner comes first.
    const [odd, next, last] = bUp === cUp ? [a, b, c] : cUp === aUp ? [b, c, a] : [c, a, b];
    const [x1, y1] = crossing(local, odd, next);
    const [x2, y2] = crossing(local, last, odd);
    if (x1 === x2 && y1 === y2) continue;
    if (up(odd)) segments.push(x1, y1, x2, y2);
    else segments.push(x2, y2, x1, y1);
  }
  return Float64Array.from(segments);
}

/** Corners in coordinates of the plane: along u, along v, and above it. */
function inPlane(positions: Float64Array, { origin, u, v, normal }: Plane, above: number): Float64Array {
  const local = new Float64Array(positions.length);
  for (let at = 0; at < positions.length; at += 3) {
    const x = (positions[at] ?? 0) - origin[0];
    const y = (positions[at + 1] ?? 0) - origin[1];
    const z = (positions[at + 2] ?? 0) - origin[2];
    local[at] = u[0] * x + u[1] * y + u[2] * z;
    local[at + 1] = v[0] * x + v[1] * y + v[2] * z;
    local[at + 2] = normal[0] * x + normal[1] * y + normal[2] * z - above;
  }
  return local;
}

/** Where an edge passes through the plane; the same bits from whichever side it is asked. */
function crossing(local: Float64Array, a: number, b: number): readonly [number, number] {
  const [p, q] = a < b ? [a, b] : [b, a];
  const at = (id: number, axis: number): number => local[3 * id + axis] ?? 0;
  const share = at(p, 2) / (at(p, 2) - at(q, 2));
  // A corner in the plane is met exactly, from every edge that ends in it.
  if (share <= 0) return [at(p, 0), at(p, 1)];
  if (share >= 1) return [at(q, 0), at(q, 1)];
  return [at(p, 0) + share * (at(q, 0) - at(p, 0)), at(p, 1) + share * (at(q, 1) - at(p, 1))];
}
