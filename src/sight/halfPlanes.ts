import type { Vec2 } from '../base/vector.ts';

/**
 * Half-planes a·p + b·q + k ≥ 0 in coordinates of the plane relative to the foot of the lens (p, q in m), a² + b² = 1,
 * so that k is the distance of the foot from the line. Three numbers each.
 */
export type HalfPlanes = readonly (readonly [a: number, b: number, k: number])[];

/** The half-planes to the left of the edges of a convex counter-clockwise polygon given relative to the foot. */
export function halfPlanesOf(corners: readonly Vec2[]): HalfPlanes {
  return corners.flatMap((from, at) => {
    const to = corners[(at + 1) % corners.length] ?? from;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const size = Math.hypot(dx, dy);
    if (size === 0) return [];
    const [a, b] = [-dy / size, dx / size];
    return [[a, b, -(a * from[0] + b * from[1])] as const];
  });
}

/** A convex polygon cut by half-planes: corners in order, possibly none. */
export function cutPolygon(corners: readonly Vec2[], halfPlanes: HalfPlanes): readonly Vec2[] {
  let kept = corners;
  for (const [a, b, k] of halfPlanes) {
    const next: Vec2[] = [];
    kept.forEach((from, at) => {
      const to = kept[(at + 1) % kept.length] ?? from;
      const [df, dt] = [a * from[0] + b * from[1] + k, a * to[0] + b * to[1] + k];
      if (df >= 0) next.push(from);
      if (df >= 0 !== dt >= 0) {
        const share = df / (df - dt);
        next.push([from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]);
      }
    });
    kept = next;
  }
  return kept.length < 3 ? [] : kept;
}
