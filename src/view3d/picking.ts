import type { Vec3 } from '../base/vector.ts';
import type { Solid } from '../model/solid.ts';
import type { Ray } from './sheet.ts';
import { onceEach } from './solids/onceEach.ts';

/** Where a ray meets a solid first. */
export interface Hit {
  readonly solid: Solid;
  readonly point: Vec3;
  /** Outward, unit. */
  readonly normal: Vec3;
  /** Along the ray, m. */
  readonly distance: number;
}

/** Solids with their boxes, so that a ray passes by most of them. */
export interface Pickable {
  readonly solids: readonly Solid[];
  /** Six numbers a solid: least x, y, z, greatest x, y, z. */
  readonly boxes: Float64Array;
}

export function pickable(solids: readonly Solid[]): Pickable {
  const boxes = new Float64Array(solids.length * 6);
  solids.forEach((solid, s) => boxes.set(boxOf(solid), s * 6));
  return { solids, boxes };
}

/** Least x, y, z, greatest x, y, z of a solid. */
export const boxOf = onceEach(({ positions }: Solid): readonly number[] => {
  const box = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  positions.forEach((value, i) => {
    const axis = i % 3;
    box[axis] = Math.min(box[axis] ?? Infinity, value);
    box[axis + 3] = Math.max(box[axis + 3] ?? -Infinity, value);
  });
  return box;
});

/** The first front of a solid that a ray meets, nearer than `within`; null where there is none. */
export function pick({ solids, boxes }: Pickable, ray: Ray, within = Infinity): Hit | null {
  let nearest: Hit | null = null;
  let limit = within;
  solids.forEach((solid, s) => {
    if (!meetsBox(boxes, s * 6, ray, limit)) return;
    const hit = meetSolid(solid, ray, limit);
    if (hit) {
      nearest = hit;
      limit = hit.distance;
    }
  });
  return nearest;
}

/** Where a ray meets each solid first, nearest first. */
export const pickAll = ({ solids, boxes }: Pickable, ray: Ray): Hit[] =>
  solids
    .flatMap((solid, s) => {
      const hit = meetsBox(boxes, s * 6, ray, Infinity) ? meetSolid(solid, ray, Infinity) : null;
      return hit ? [hit] : [];
    })
    .toSorted((a, b) => a.distance - b.distance);

/** Slab test; without arrays, because labels ask it for thousands of rays. */
function meetsBox(boxes: Float64Array, at: number, { from, along }: Ray, limit: number): boolean {
  let enter = 0;
  let leave = limit;
  for (let axis = 0; axis < 3; axis += 1) {
    const low = boxes[at + axis] ?? 0;
    const high = boxes[at + axis + 3] ?? 0;
    const start = from[axis] ?? 0;
    const run = along[axis] ?? 0;
    if (run === 0) {
      if (start < low || start > high) return false;
      continue;
    }
    const one = (low - start) / run;
    const other = (high - start) / run;
    if (one < other) {
      if (one > enter) enter = one;
      if (other < leave) leave = other;
    } else {
      if (other > enter) enter = other;
      if (one < leave) leave = one;
    }
    if (enter > leave) return false;
  }
  return true;
}

function meetSolid(solid: Solid, { from, along }: Ray, limit: number): Hit | null {
  const { positions: p, triangles } = solid;
  let found: Hit | null = null;
  let least = limit;
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    const a = (triangles[i] ?? 0) * 3;
    const b = (triangles[i + 1] ?? 0) * 3;
    const c = (triangles[i + 2] ?? 0) * 3;
    const ax = p[a] ?? 0;
    const ay = p[a + 1] ?? 0;
    const az = p[a + 2] ?? 0;
    const ux = (p[b] ?? 0) - ax;
    const uy = (p[b + 1] ?? 0) - ay;
    const uz = (p[b + 2] ?? 0) - az;
    const vx = (p[c] ?? 0) - ax;
    const vy = (p[c + 1] ?? 0) - ay;
    const vz = (p[c + 2] ?? 0) - az;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const facing = nx * along[0] + ny * along[1] + nz * along[2];
    // A back is never met first from outside a closed solid.
    if (facing >= 0) continue;
    const wx = from[0] - ax;
    const wy = from[1] - ay;
    const wz = from[2] - az;
    const t = -(nx * wx + ny * wy + nz * wz) / facing;
    if (t <= 0 || t >= least) continue;
    const qx = wx + t * along[0];
    const qy = wy + t * along[1];
    const qz = wz + t * along[2];
    const n2 = nx * nx + ny * ny + nz * nz;
    const s = ((qy * vz - qz * vy) * nx + (qz * vx - qx * vz) * ny + (qx * vy - qy * vx) * nz) / n2;
    const r = ((uy * qz - uz * qy) * nx + (uz * qx - ux * qz) * ny + (ux * qy - uy * qx) * nz) / n2;
    if (s < 0 || r < 0 || s + r > 1) continue;
    const size = Math.sqrt(n2);
    least = t;
    found = {
      solid,
      distance: t,
      point: [from[0] + t * along[0], from[1] + t * along[1], from[2] + t * along[2]],
      normal: [nx / size, ny / size, nz / size],
    };
  }
  return found;
}
