import type { Vec3 } from '../base/vector.ts';
import type { Solid } from '../model/solid.ts';
import type { Ray } from './sheet.ts';

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
  solids.forEach(({ positions }, s) => {
    const box = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
    positions.forEach((value, i) => {
      const axis = i % 3;
      box[axis] = Math.min(box[axis] ?? Infinity, value);
      box[axis + 3] = Math.max(box[axis + 3] ?? -Infinity, value);
    });
    boxes.set(box, s * 6);
  });
  return { solids, boxes };
}

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

function meetsBox(boxes: Float64Array, at: number, { from, along }: Ray, limit: number): boolean {
  let [enter, leave] = [0, limit];
  for (const axis of [0, 1, 2] as const) {
    const [low, high] = [boxes[at + axis] ?? 0, boxes[at + axis + 3] ?? 0];
    const d = along[axis];
    if (d === 0) {
      if (from[axis] < low || from[axis] > high) return false;
      continue;
    }
    const [a, b] = [(low - from[axis]) / d, (high - from[axis]) / d];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter <= leave;
}

function meetSolid(solid: Solid, { from, along }: Ray, limit: number): Hit | null {
  const { positions: p, triangles } = solid;
  let found: Hit | null = null;
  let least = limit;
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    const a = (triangles[i] ?? 0) * 3;
    const b = (triangles[i + 1] ?? 0) * 3;
    const c = (triangles[i + 2] ?? 0) * 3;
    const [ax, ay, az] = [p[a] ?? 0, p[a + 1] ?? 0, p[a + 2] ?? 0];
    const [ux, uy, uz] = [(p[b] ?? 0) - ax, (p[b + 1] ?? 0) - ay, (p[b + 2] ?? 0) - az];
    const [vx, vy, vz] = [(p[c] ?? 0) - ax, (p[c + 1] ?? 0) - ay, (p[c + 2] ?? 0) - az];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const facing = nx * along[0] + ny * along[1] + nz * along[2];
    // A back is never met first from outside a closed solid.
    if (facing >= 0) continue;
    const [wx, wy, wz] = [from[0] - ax, from[1] - ay, from[2] - az];
    const t = -(nx * wx + ny * wy + nz * wz) / facing;
    if (t <= 0 || t >= least) continue;
    const [qx, qy, qz] = [wx + t * along[0], wy + t * along[1], wz + t * along[2]];
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
