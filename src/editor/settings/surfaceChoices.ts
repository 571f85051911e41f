import { dot, subtract, type Vec3 } from '../../base/vector.ts';
import type { SurfaceKey } from '../../coverage/target.ts';
import { solidsOf } from '../../model/solids.ts';
import type { Structure } from '../../model/structure.ts';
import { roofSurfaces, wallSurfaces } from '../../model/surface.ts';

/** A face of a structure that coverage can be asked for. */
export interface SurfaceChoice {
  readonly name: string;
  readonly key: SurfaceKey;
}

/** The walls and roof faces of a structure, walls first. */
export const surfaceChoices = (structure: Structure): readonly SurfaceChoice[] =>
  [...wallSurfaces(structure), ...roofSurfaces(structure, solidsOf(structure).solids)].flatMap(
    ({ of, owner, face, name }) =>
      of === 'patch' ? [] : [{ name, key: { of, structure: owner, face } as const }],
  );

/** How far a point may lie off the face that it is on, m, and how far its normal may be turned: a cosine. */
const ON = 0.3;
const SAME_WAY = 0.98;

/** The face of a structure on which a point lies that a ray has struck, recesses in it included; null where it has none there. */
export function surfaceAt(structure: Structure, point: Vec3, normal: Vec3): SurfaceChoice | null {
  let best: { readonly off: number; readonly choice: SurfaceChoice } | null = null;
  const faces = [...wallSurfaces(structure), ...roofSurfaces(structure, solidsOf(structure).solids)];
  for (const { of, owner, face, name, plane } of faces) {
    const off = Math.abs(dot(plane.normal, subtract(point, plane.origin)));
    if (of === 'patch' || off > ON || dot(plane.normal, normal) < SAME_WAY) continue;
    if (best === null || off < best.off)
      best = { off, choice: { name, key: { of, structure: owner, face } } };
  }
  return best?.choice ?? null;
}

/** Whether two keys name the same surface. */
export const sameSurface = (one: SurfaceKey, two: SurfaceKey): boolean =>
  JSON.stringify(one) === JSON.stringify(two);
