import type { Faces } from './faces.ts';
import { MOST_CORNERS } from './faceSize.ts';

/** Groups of more faces are not asked: those of a few faces hide most. */
const MOST = 64;
/** A corner so much before another face, m, lies in its plane. */
const FLAT = 1e-9;

/**
 * 1 a group of faces of which no corner lies before any of them: of a closed mesh in one piece, a convex solid. Such faces in
 * two pieces would each lie before one of the other.
 */
export function convexGroups(
  faces: Pick<Faces, 'starts' | 'sides' | 'corners' | 'normals' | 'neighbours'>,
): Uint8Array {
  const { starts } = faces;
  const convex = new Uint8Array(Math.max(0, starts.length - 1));
  for (let group = 0; group < convex.length; group += 1) {
    const [from, to] = [starts[group] ?? 0, starts[group + 1] ?? 0];
    if (to - from >= 4 && to - from <= MOST && isClosed(faces, from, to) && isConvex(faces, from, to))
      convex[group] = 1;
  }
  return convex;
}

function isClosed(
  { sides, neighbours }: Pick<Faces, 'sides' | 'neighbours'>,
  from: number,
  to: number,
): boolean {
  for (let face = from; face < to; face += 1)
    for (let k = 0; k < (sides[face] ?? 0); k += 1)
      if ((neighbours[face * MOST_CORNERS + k] ?? -1) < 0) return false;
  return true;
}

function isConvex(
  { sides, corners, normals }: Pick<Faces, 'sides' | 'corners' | 'normals'>,
  from: number,
  to: number,
): boolean {
  for (let face = from; face < to; face += 1) {
    const [n, at] = [face * 4, face * MOST_CORNERS * 3];
    const [nx, ny, nz, size] = [
      normals[n] ?? 0,
      normals[n + 1] ?? 0,
      normals[n + 2] ?? 0,
      normals[n + 3] ?? 0,
    ];
    const [x, y, z] = [corners[at] ?? 0, corners[at + 1] ?? 0, corners[at + 2] ?? 0];
    for (let other = from; other < to; other += 1)
      for (let k = 0; k < (sides[other] ?? 0); k += 1) {
        const c = (other * MOST_CORNERS + k) * 3;
        const off =
          nx * ((corners[c] ?? 0) - x) + ny * ((corners[c + 1] ?? 0) - y) + nz * ((corners[c + 2] ?? 0) - z);
        if (off > FLAT * size) return false;
      }
  }
  return true;
}
