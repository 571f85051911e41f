/**
 * Sight by brute force: every triangle, both sides, parametric intersection after Möller and Trumbore (Journal of Graphics
 * Tools 2(1), 1997, from memory). No tree, no shadows, no half-planes; reads raw triangles only.
 */
export interface Triangles {
  /** Nine numbers a triangle. */
  readonly corners: readonly number[];
  readonly owner: readonly string[];
}

export interface Blocker {
  readonly owner: string;
  /** Distance from the eye, m. */
  readonly at: number;
}

/** The nearest triangle strictly between eye and target, `slack` metres off either end; null where the way is free. */
export function nearestBlocker(
  triangles: Triangles,
  eye: readonly number[],
  target: readonly number[],
  slack = 0.001,
): Blocker | null {
  const met = allBlockers(triangles, eye, target, slack);
  return met.reduce<Blocker | null>((best, one) => (best === null || one.at < best.at ? one : best), null);
}

/** Whether a point lies within closed solids: an odd number of faces on a slanting way out. */
export const isWithin = (triangles: Triangles, point: readonly number[]): boolean => {
  const out = [(point[0] ?? 0) + 123.4, (point[1] ?? 0) + 217.7, (point[2] ?? 0) + 931.3];
  const counts = new Map<string, number>();
  for (const { owner } of allBlockers(triangles, point, out, 0))
    counts.set(owner, (counts.get(owner) ?? 0) + 1);
  return [...counts.values()].some((count) => count % 2 === 1);
};

function allBlockers(
  { corners, owner }: Triangles,
  eye: readonly number[],
  target: readonly number[],
  slack: number,
): Blocker[] {
  const [ox, oy, oz] = [eye[0] ?? 0, eye[1] ?? 0, eye[2] ?? 0];
  const d = [(target[0] ?? 0) - ox, (target[1] ?? 0) - oy, (target[2] ?? 0) - oz];
  const length = Math.sqrt((d[0] ?? 0) ** 2 + (d[1] ?? 0) ** 2 + (d[2] ?? 0) ** 2);
  const [dx, dy, dz] = [(d[0] ?? 0) / length, (d[1] ?? 0) / length, (d[2] ?? 0) / length];
  const met: Blocker[] = [];
  for (let i = 0; i < owner.length; i += 1) {
    const c = (k: number) => corners[i * 9 + k] ?? 0;
    const e1 = [c(3) - c(0), c(4) - c(1), c(5) - c(2)] as const;
    const e2 = [c(6) - c(0), c(7) - c(1), c(8) - c(2)] as const;
    const p = [dy * e2[2] - dz * e2[1], dz * e2[0] - dx * e2[2], dx * e2[1] - dy * e2[0]] as const;
    const det = e1[0] * p[0] + e1[1] * p[1] + e1[2] * p[2];
    if (Math.abs(det) < 1e-14) continue;
    const s = [ox - c(0), oy - c(1), oz - c(2)] as const;
    const u = (s[0] * p[0] + s[1] * p[1] + s[2] * p[2]) / det;
    if (u < 0 || u > 1) continue;
    const q = [
      s[1] * e1[2] - s[2] * e1[1],
      s[2] * e1[0] - s[0] * e1[2],
      s[0] * e1[1] - s[1] * e1[0],
    ] as const;
    const v = (dx * q[0] + dy * q[1] + dz * q[2]) / det;
    if (v < 0 || u + v > 1) continue;
    const t = (e2[0] * q[0] + e2[1] * q[1] + e2[2] * q[2]) / det;
    if (t > slack && t < length - slack) met.push({ owner: owner[i] ?? '', at: t });
  }
  return met;
}

/** Whether every target within `radius` of this one (in the plane, eight directions) is judged alike: else it grazes an edge. */
export function isSettled(
  triangles: Triangles,
  eye: readonly number[],
  target: readonly number[],
  radius: number,
): boolean {
  const middle = nearestBlocker(triangles, eye, target) === null;
  for (let turn = 0; turn < 8; turn += 1) {
    const angle = (turn * Math.PI) / 4;
    const near = [
      (target[0] ?? 0) + radius * Math.cos(angle),
      (target[1] ?? 0) + radius * Math.sin(angle),
      target[2] ?? 0,
    ];
    if ((nearestBlocker(triangles, eye, near) === null) !== middle) return false;
  }
  return true;
}
