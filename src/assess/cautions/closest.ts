import { add, cross, dot, scale, subtract, type Vec3 } from '../../base/vector.ts';
import type { Facets } from '../../sight/facets.ts';

/** Corners of a facet. */
export function cornersOf({ corners }: Facets, facet: number): readonly [Vec3, Vec3, Vec3] {
  const at = (k: number): Vec3 => [
    corners[facet * 9 + k * 3] ?? 0,
    corners[facet * 9 + k * 3 + 1] ?? 0,
    corners[facet * 9 + k * 3 + 2] ?? 0,
  ];
  return [at(0), at(1), at(2)];
}

const within = (share: number): number => Math.min(1, Math.max(0, share));

function nearestOnEdge(point: Vec3, a: Vec3, b: Vec3): Vec3 {
  const edge = subtract(b, a);
  const size2 = dot(edge, edge);
  return size2 === 0 ? a : add(a, scale(edge, within(dot(subtract(point, a), edge) / size2)));
}

/** The point of a triangle nearest to another: the foot on its plane where that lies within, else on an edge. */
function nearestOnTriangle(point: Vec3, [a, b, c]: readonly [Vec3, Vec3, Vec3]): Vec3 {
  const normal = cross(subtract(b, a), subtract(c, a));
  const size2 = dot(normal, normal);
  if (size2 > 0) {
    const foot = subtract(point, scale(normal, dot(subtract(point, a), normal) / size2));
    const sides = [
      [a, b],
      [b, c],
      [c, a],
    ] as const;
    const isWithin = sides.every(
      ([from, to]) => dot(cross(subtract(to, from), subtract(foot, from)), normal) >= 0,
    );
    if (isWithin) return foot;
  }
  const ends = [nearestOnEdge(point, a, b), nearestOnEdge(point, b, c), nearestOnEdge(point, c, a)];
  return ends.reduce((best, one) => (gap(point, one) < gap(point, best) ? one : best));
}

/** Distance of two points, m. */
export const gap = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Two points nearest to one another on two segments: one of each. Source: both squared distances' derivatives are 0. */
export function nearestOfSegments(
  p: Vec3,
  p2: Vec3,
  q: Vec3,
  q2: Vec3,
): { readonly on: Vec3; readonly other: Vec3; readonly share: number } {
  const [u, v, w] = [subtract(p2, p), subtract(q2, q), subtract(p, q)];
  const [a, b, c, d, e] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const slant = a * c - b * b;
  let s = slant > 1e-12 * a * c ? within((b * e - c * d) / slant) : 0;
  const t = c > 0 ? within((b * s + e) / c) : 0;
  s = a > 0 ? within((b * t - d) / a) : 0;
  return { on: add(p, scale(u, s)), other: add(q, scale(v, t)), share: s };
}

/** The point of a solid's surface nearest to another. @param solid index in the scene */
export function nearestOnSolid(facets: Facets, solid: number, point: Vec3): Vec3 | null {
  let best: Vec3 | null = null;
  for (const { solid: of, from, to } of facets.groups) {
    if (of !== solid) continue;
    for (let facet = from; facet < to; facet += 1) {
      const at = nearestOnTriangle(point, cornersOf(facets, facet));
      if (best === null || gap(point, at) < gap(point, best)) best = at;
    }
  }
  return best;
}
