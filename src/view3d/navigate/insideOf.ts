import type { Vec3 } from '../../base/vector.ts';
import type { Solid } from '../../model/solid.ts';

/** The plumb line is a hair aside, so that it runs between the edges of round numbers, m. */
const ASIDE = [1.237e-6, 2.719e-6] as const;

/** The solid that holds a point: a plumb line up from it leaves the solid an odd number of times. */
export const insideOf = (solids: readonly Solid[], point: Vec3): Solid | null =>
  solids.find((solid) => solid.passage === 'solid' && facesAbove(solid, point) % 2 === 1) ?? null;

function facesAbove({ positions: p, triangles }: Solid, [x, y, z]: Vec3): number {
  let count = 0;
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    const [a, b, c] = [(triangles[i] ?? 0) * 3, (triangles[i + 1] ?? 0) * 3, (triangles[i + 2] ?? 0) * 3];
    const [ax, ay, az] = [p[a] ?? 0, p[a + 1] ?? 0, p[a + 2] ?? 0];
    const [ux, uy, uz] = [(p[b] ?? 0) - ax, (p[b + 1] ?? 0) - ay, (p[b + 2] ?? 0) - az];
    const [vx, vy, vz] = [(p[c] ?? 0) - ax, (p[c + 1] ?? 0) - ay, (p[c + 2] ?? 0) - az];
    const over = ux * vy - uy * vx;
    if (over === 0) continue;
    const [dx, dy] = [x + ASIDE[0] - ax, y + ASIDE[1] - ay];
    const s = (dx * vy - dy * vx) / over;
    const t = (ux * dy - uy * dx) / over;
    if (s < 0 || t < 0 || s + t > 1) continue;
    if (az + s * uz + t * vz > z) count += 1;
  }
  return count;
}
