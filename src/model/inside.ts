import type { Vec3 } from '../base/vector.ts';
import type { Solid } from './solid.ts';

/**
 * Whether a point lies within a solid. Either answer on its surface; sure from a micrometre away from it.
 * Cost: one arctangent a triangle, none when the point is outside the solid's box.
 * Source: the sum of the solid angles of a closed surface is 4π inside and 0 outside; solid angle of a triangle
 * from the triple product of the directions to its corners (any text on solid angles; from memory).
 */
export function insideSolid(solid: Solid, point: Vec3): boolean {
  return inBox(solid.positions, point) && windingNumber(solid, point) > 0.5;
}

function inBox(positions: Float64Array, point: Vec3): boolean {
  for (let axis = 0; axis < 3; axis++) {
    const value = point[axis] ?? Number.NaN;
    let [isAbove, isBelow] = [false, false];
    for (let k = axis; k < positions.length; k += 3) {
      const corner = positions[k] ?? Number.NaN;
      if (corner <= value) isBelow = true;
      if (corner >= value) isAbove = true;
      if (isAbove && isBelow) break;
    }
    if (!isAbove || !isBelow) return false;
  }
  return true;
}

/** How often a closed surface goes around a point: a whole number but for rounding. */
export function windingNumber({ positions, triangles }: Solid, [px, py, pz]: Vec3): number {
  let halfAngles = 0;
  const at = (corner: number, axis: number): number => positions[3 * (triangles[corner] ?? 0) + axis] ?? 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [ax, ay, az] = [at(t, 0) - px, at(t, 1) - py, at(t, 2) - pz];
    const [bx, by, bz] = [at(t + 1, 0) - px, at(t + 1, 1) - py, at(t + 1, 2) - pz];
    const [cx, cy, cz] = [at(t + 2, 0) - px, at(t + 2, 1) - py, at(t + 2, 2) - pz];
    const a = Math.sqrt(ax * ax + ay * ay + az * az);
    const b = Math.sqrt(bx * bx + by * by + bz * bz);
    const c = Math.sqrt(cx * cx + cy * cy + cz * cz);
    const triple = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    const scale =
      a * b * c +
      (ax * bx + ay * by + az * bz) * c +
      (bx * cx + by * cy + bz * cz) * a +
      (cx * ax + cy * ay + cz * az) * b;
    halfAngles += Math.atan2(triple, scale);
  }
  return halfAngles / (2 * Math.PI);
}
