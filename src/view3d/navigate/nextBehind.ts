import type { Pointed, Struck } from '../../editor/tools/pointed.ts';
import { GROUND } from '../ground/terrainFaces.ts';
import { pickAll, type Pickable } from '../picking.ts';

/** What is pointed at when the same spot is clicked again: the thing behind the selected one, after the last the first. */
export function nextBehind(at: Pointed, solids: Pickable, selected: string | null): Pointed {
  const things: { readonly id: string; readonly camera: string | null; readonly struck: Struck | null }[] =
    [];
  if (at.camera !== null) things.push({ id: at.camera, camera: at.camera, struck: at.struck });
  for (const { solid, point, normal } of pickAll(solids, at.ray)) {
    const id = solid.structure;
    // What is below the ground is not behind anything, but in it.
    if (solid.id === GROUND) break;
    if (!things.some((one) => one.id === id))
      things.push({ id, camera: null, struck: { point, normal, structure: id } });
  }
  const index = things.findIndex(({ id }) => id === selected);
  const next = things[(index + 1) % things.length];
  return index < 0 || !next ? at : { ...at, handle: null, camera: next.camera, struck: next.struck };
}
