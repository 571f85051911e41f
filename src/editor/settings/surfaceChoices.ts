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

/** Whether two keys name the same surface. */
export const sameSurface = (one: SurfaceKey, two: SurfaceKey): boolean =>
  JSON.stringify(one) === JSON.stringify(two);
