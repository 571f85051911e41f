/*
 * Heights of hip roofs of pitch 45° by brute force over the edges, in three ways that share nothing with the front that
 * `src/model/skeleton.ts` moves: no events, no queue, no faces.
 */
type P = readonly [x: number, y: number];

const edgesOf = (rings: readonly (readonly P[])[]): (readonly [P, P])[] =>
  rings.flatMap((ring) => ring.map((a, k) => [a, ring[(k + 1) % ring.length] ?? a] as const));

/** How far a point lies on the left of the line through two others. */
const leftBy = ([ax, ay]: P, [bx, by]: P, [x, y]: P): number =>
  ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay);

/** Over a convex outline: the distance to the nearest of its edges' lines. Follows from the planes alone. */
export const convexHeight = (ring: readonly P[], p: P): number =>
  Math.min(...edgesOf([ring]).map(([a, b]) => leftBy(a, b, p)));

/**
 * Over an outline with sides along x and y: the distance to its boundary as the greater of the distances in x and y,
 * since a front with square corners is the edge of squares around what is outside (hand-worked).
 */
export const squareHeight = (rings: readonly (readonly P[])[], [x, y]: P): number =>
  Math.min(
    ...edgesOf(rings).map(([[ax, ay], [bx, by]]) => {
      const dx = Math.max(Math.min(ax, bx) - x, 0, x - Math.max(ax, bx));
      const dy = Math.max(Math.min(ay, by) - y, 0, y - Math.max(ay, by));
      return Math.max(dx, dy);
    }),
  );

interface Rider {
  readonly from: P;
  readonly speed: P;
  readonly edges: readonly [number, number];
  until: number;
}

/**
 * Over any outline in general position: the lower envelope of slabs. An edge's slab is its plane over the strip straight
 * in from it; from each corner that turns inwards a rider sets out along the bisector, as fast as the corner, and stops at
 * the outline or at a track that another has left before; both edges' planes also hold over what lies straight in from
 * its track. Source: the reduction to motorcycle graphs by Cheng and Vigneron (2002), from memory.
 */
export function slabHeights(rings: readonly (readonly P[])[]): (p: P) => number {
  const edges = edgesOf(rings);
  const along = edges.map(([[ax, ay], [bx, by]]): P => {
    const size = Math.hypot(bx - ax, by - ay);
    return [(bx - ax) / size, (by - ay) / size];
  });
  const riders: Rider[] = [];
  let start = 0;
  for (const ring of rings) {
    ring.forEach((corner, k) => {
      const [one, two] = [start + ((k + ring.length - 1) % ring.length), start + k];
      const [[dx, dy], [ex, ey]] = [along[one] ?? [0, 0], along[two] ?? [0, 0]];
      const turn = dx * ey - dy * ex;
      if (turn >= 0) return;
      // v · n = 1 for both inward normals, by Cramer's rule.
      const speed: P = [(ex - dx) / turn, (ey - dy) / turn];
      riders.push({ from: corner, speed, edges: [one, two], until: Infinity });
    });
    start += ring.length;
  }
  for (const rider of riders) {
    edges.forEach(([a, b], e) => {
      if (rider.edges.includes(e)) return;
      const hit = crossing(rider.from, rider.speed, a, [b[0] - a[0], b[1] - a[1]]);
      if (hit && hit[0] > 0 && hit[1] >= 0 && hit[1] <= 1) rider.until = Math.min(rider.until, hit[0]);
    });
  }
  // Crashes in order of time: a rider stops at a track unless its owner stopped before reaching that place.
  const crashes = riders.flatMap((rider) =>
    riders.flatMap((other) => {
      const hit = rider === other ? null : crossing(rider.from, rider.speed, other.from, other.speed);
      return hit && hit[1] >= 0 && hit[0] > hit[1] ? [{ rider, other, time: hit[0], left: hit[1] }] : [];
    }),
  );
  for (const { rider, other, time, left } of crashes.sort((a, b) => a.time - b.time)) {
    if (time < rider.until && left <= other.until) rider.until = time;
  }
  const slabs = [
    ...edges.map(([a, b], e) => ({ e, a, b })),
    ...riders.flatMap(({ from, speed, edges: both, until }) =>
      both.map((e) => ({ e, a: from, b: [from[0] + speed[0] * until, from[1] + speed[1] * until] as P })),
    ),
  ];
  return (p) => {
    let least = Infinity;
    for (const { e, a, b } of slabs) {
      const [[ux, uy], edge] = [along[e] ?? [0, 0], edges[e]];
      if (!edge) continue;
      const s = (q: P): number => q[0] * ux + q[1] * uy;
      const [low, high] = [Math.min(s(a), s(b)), Math.max(s(a), s(b))];
      if (!(high > low) || s(p) < low || s(p) > high) continue;
      // Above the slab's lower edge, which for a track rises along it.
      const share = (s(p) - s(a)) / (s(b) - s(a));
      const foot: P = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
      const height = leftBy(edge[0], edge[1], p);
      if (height >= leftBy(edge[0], edge[1], foot) - 1e-9) least = Math.min(least, height);
    }
    return least;
  };
}

/** Where p + t·u and q + s·v meet: [t, s]; null when they are parallel. */
function crossing(p: P, u: P, q: P, v: P): readonly [number, number] | null {
  const slant = u[0] * v[1] - u[1] * v[0];
  if (Math.abs(slant) < 1e-14) return null;
  const [x, y] = [q[0] - p[0], q[1] - p[1]];
  return [(x * v[1] - y * v[0]) / slant, (x * u[1] - y * u[0]) / slant];
}
