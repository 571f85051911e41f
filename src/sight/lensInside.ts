import { HIT_TOLERANCE } from '../base/tolerance.ts';
import { GROUND } from '../model/terrainSolid.ts';
import { cross, dot, subtract, type Vec3 } from '../base/vector.ts';
import type { FacetGroup, Facets } from './facets.ts';

/**
 * The solid that holds a lens more than HIT_TOLERANCE deep; null where none does. Glass and mesh hold no lens.
 * By the sum of solid angles that the faces take up: 4π within a closed mesh, 0 outside.
 * Source: van Oosterom and Strackee, IEEE Trans. Biomed. Eng. 30 (1983), from memory.
 */
export function lensInside(eye: Vec3, facets: Facets): number | null {
  for (const group of facets.groups) {
    if (group.passage !== 'solid' || !boxHolds(group.box, eye)) continue;
    if (turnsRound(eye, facets, group) && depth(eye, facets, group) > HIT_TOLERANCE) return group.solid;
  }
  return null;
}

/**
 * The solids of which back faces count too: those whose surface a lens touches, HIT_TOLERANCE from it or nearer, since a ray
 * into the solid meets none of its front faces well before the lens's own tolerance; and mesh, leaves or glass around the
 * lens, through which it looks out.
 * @returns 1 a solid; null where it touches none
 */
export function touchedSolids(eye: Vec3, facets: Facets): Uint8Array | null {
  let touched: Uint8Array | null = null;
  const { groups, faces } = facets;
  for (let at = 0; at < groups.length; at += 1) {
    if (!boxNear(faces.boxes, at * 6, eye)) continue;
    const group = groups[at];
    if (group === undefined) continue;
    // Uneven ground goes on below a lens that touches it, and is asked for its height elsewhere.
    if (facets.solids[group.solid]?.id === GROUND) continue;
    const around = group.passage !== 'solid' && turnsRound(eye, facets, group);
    if (!around && !touches(eye, facets, group)) continue;
    touched ??= new Uint8Array(facets.solids.length);
    touched[group.solid] = 1;
  }
  return touched;
}

/** Whether a face is HIT_TOLERANCE away or nearer. Most are told by their plane. */
function touches(eye: Vec3, { corners, normals }: Facets, { from, to }: FacetGroup): boolean {
  const corner = (facet: number, k: number): Vec3 => [
    corners[facet * 9 + k * 3] ?? 0,
    corners[facet * 9 + k * 3 + 1] ?? 0,
    corners[facet * 9 + k * 3 + 2] ?? 0,
  ];
  for (let facet = from; facet < to; facet += 1) {
    const [nx, ny, nz] = [normals[facet * 3] ?? 0, normals[facet * 3 + 1] ?? 0, normals[facet * 3 + 2] ?? 0];
    const off =
      nx * ((corners[facet * 9] ?? 0) - eye[0]) +
      ny * ((corners[facet * 9 + 1] ?? 0) - eye[1]) +
      nz * ((corners[facet * 9 + 2] ?? 0) - eye[2]);
    if (Math.abs(off) > HIT_TOLERANCE * Math.sqrt(nx * nx + ny * ny + nz * nz)) continue;
    if (distanceToTriangle(eye, corner(facet, 0), corner(facet, 1), corner(facet, 2)) <= HIT_TOLERANCE)
      return true;
  }
  return false;
}

const boxNear = (boxes: Float64Array, at: number, eye: Vec3): boolean =>
  eye[0] >= (boxes[at] ?? 0) - HIT_TOLERANCE &&
  eye[0] <= (boxes[at + 3] ?? 0) + HIT_TOLERANCE &&
  eye[1] >= (boxes[at + 1] ?? 0) - HIT_TOLERANCE &&
  eye[1] <= (boxes[at + 4] ?? 0) + HIT_TOLERANCE &&
  eye[2] >= (boxes[at + 2] ?? 0) - HIT_TOLERANCE &&
  eye[2] <= (boxes[at + 5] ?? 0) + HIT_TOLERANCE;

const boxHolds = (box: Float64Array, eye: Vec3): boolean =>
  eye[0] > (box[0] ?? 0) &&
  eye[0] < (box[3] ?? 0) &&
  eye[1] > (box[1] ?? 0) &&
  eye[1] < (box[4] ?? 0) &&
  eye[2] > (box[2] ?? 0) &&
  eye[2] < (box[5] ?? 0);

function turnsRound(eye: Vec3, { corners }: Facets, { from, to }: FacetGroup): boolean {
  let total = 0;
  for (let facet = from; facet < to; facet += 1) {
    const n = (k: number) => (corners[facet * 9 + k] ?? 0) - (eye[k % 3] ?? 0);
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = [n(0), n(1), n(2), n(3), n(4), n(5), n(6), n(7), n(8)];
    const [a, b, c] = [Math.hypot(ax, ay, az), Math.hypot(bx, by, bz), Math.hypot(cx, cy, cz)];
    const volume = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    const ab = ax * bx + ay * by + az * bz;
    const bc = bx * cx + by * cy + bz * cz;
    const ca = cx * ax + cy * ay + cz * az;
    total += 2 * Math.atan2(volume, a * b * c + ab * c + bc * a + ca * b);
  }
  return Math.abs(total) > 2 * Math.PI;
}

/** Distance from the lens to the nearest face, m. */
function depth(eye: Vec3, { corners }: Facets, { from, to }: FacetGroup): number {
  let least = Infinity;
  for (let facet = from; facet < to; facet += 1) {
    const corner = (k: number): Vec3 => [
      corners[facet * 9 + k * 3] ?? 0,
      corners[facet * 9 + k * 3 + 1] ?? 0,
      corners[facet * 9 + k * 3 + 2] ?? 0,
    ];
    least = Math.min(least, distanceToTriangle(eye, corner(0), corner(1), corner(2)));
  }
  return least;
}

/** Distance from a point to a triangle: to its plane where the foot lies within, else to the nearest edge. */
function distanceToTriangle(point: Vec3, a: Vec3, b: Vec3, c: Vec3): number {
  const [u, v, w] = [subtract(b, a), subtract(c, a), subtract(point, a)];
  const normal = cross(u, v);
  const size = Math.hypot(...normal);
  if (size > 0) {
    const inside = [[a, b] as const, [b, c] as const, [c, a] as const].every(
      ([from, to]) => dot(cross(subtract(to, from), subtract(point, from)), normal) >= 0,
    );
    if (inside) return Math.abs(dot(w, normal)) / size;
  }
  return Math.min(toEdge(point, a, b), toEdge(point, b, c), toEdge(point, c, a));
}

function toEdge(point: Vec3, from: Vec3, to: Vec3): number {
  const [edge, away] = [subtract(to, from), subtract(point, from)];
  const length2 = dot(edge, edge);
  const share = length2 === 0 ? 0 : Math.min(1, Math.max(0, dot(away, edge) / length2));
  return Math.hypot(away[0] - share * edge[0], away[1] - share * edge[1], away[2] - share * edge[2]);
}
