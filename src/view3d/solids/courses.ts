import type { Vec3 } from '../../base/vector.ts';
import type { Solid } from '../../model/solid.ts';
import type { Ends } from '../lines/FatLines.ts';
import { faceNormals } from './edges.ts';
import { onceEachFrom } from './onceEach.ts';

/** Between two courses, along the slope, m: how many tiles one line stands for is a drawing's choice. */
const COURSE = 0.9;
/** Flatter than this is no roof with courses, steeper than that is a wall: the upward part of the face's normal. */
const FLAT = Math.cos((4 * Math.PI) / 180);
const STEEP = Math.cos((75 * Math.PI) / 180);

/** Level lines over the pitched planes of a solid. Six numbers a segment, site frame. */
export function coursesOf(solid: Solid): number[] {
  const lines: number[] = [];
  const normals = faceNormals(solid);
  const { positions: p, triangles } = solid;
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    const up = normals[i + 2] ?? 0;
    if (up > FLAT || up < STEEP) continue;
    const corners = [0, 1, 2].map((k): Vec3 => {
      const at = (triangles[i + k] ?? 0) * 3;
      return [p[at] ?? 0, p[at + 1] ?? 0, p[at + 2] ?? 0];
    });
    // From the site's zero upwards, so that the triangles of one plane continue each other's lines.
    const step = COURSE * Math.sqrt(1 - up * up);
    const heights = corners.map(([, , z]) => z);
    const top = Math.max(...heights);
    for (let n = Math.floor(Math.min(...heights) / step) + 1; n * step < top; n += 1)
      lines.push(...levelAcross(corners, n * step));
  }
  return lines;
}

/** The ends of the courses of one solid, relative to an origin. */
export const courseEnds = onceEachFrom((solid: Solid, origin): Ends => {
  const lines = coursesOf(solid);
  const half = (first: number): Float32Array =>
    Float32Array.from({ length: lines.length / 2 }, (_, i) => {
      const [segment, axis] = [Math.floor(i / 3), i % 3];
      return (lines[segment * 6 + first + axis] ?? 0) - (origin[axis] ?? 0);
    });
  return { from: half(0), to: half(3) };
});

/** Where a level cuts a triangle; nothing where it only touches a corner. */
function levelAcross(corners: readonly Vec3[], z: number): number[] {
  const ends = corners.flatMap((a, i) => {
    const b = corners[(i + 1) % 3] ?? a;
    if (a[2] >= z === b[2] >= z) return [];
    const share = (z - a[2]) / (b[2] - a[2]);
    return [[a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, z]];
  });
  return ends.length === 2 ? ends.flat() : [];
}
