import type { Scratch } from '../coverage/cells.ts';
import { litGround } from '../coverage/litGround.ts';
import type { FlatSurface } from '../model/surface.ts';
import type { Terrain } from '../model/terrain.ts';
import type { Facets } from '../sight/facets.ts';
import { groundOf, surfaceGround, type Ground } from './ground.ts';
import type { Scene } from './scene.ts';
import { unevenTarget } from './unevenTarget.ts';

/** What is asked of a scene: a flat surface, or a height above the ground, which may be uneven. */
interface Asked {
  readonly surface: FlatSurface | null;
  readonly terrain: Terrain | null;
  /** m */
  readonly height: number;
  /** Side of a cell, m; left out for the app's own. */
  readonly cell?: number | undefined;
}

/** The target surface of a scene, as lit at night where the scene has a night. */
export function targetGround(
  scene: Scene,
  { surface, terrain, height, cell }: Asked,
  facets: () => Facets,
  scratch: Scratch,
): Ground {
  if (surface === null && terrain !== null)
    return unevenTarget(scene, terrain, height, facets, scratch, cell);
  const ground = surface === null ? groundOf(scene, height, cell) : surfaceGround(scene, surface, cell);
  if (scene.night === null) return ground;
  return { ...ground, lit: litGround(scene.night, ground.grid, ground.window, facets(), scratch) };
}
