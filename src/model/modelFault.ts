import type { Fault } from '../base/fault.ts';

/** Every fault that this room reports. Paths run from the structure or mount; corners in `given` count from 1. */
export type ModelFaultCode =
  // Sizes: not a finite number; below the least that can be built; too far from the origin.
  | 'size.number'
  | 'size.small'
  | 'size.far'
  // Rings over ground.
  | 'footprint.corners'
  | 'footprint.repeated'
  | 'footprint.crosses'
  | 'footprint.touches'
  | 'footprint.area'
  | 'footprint.hole-outside'
  | 'footprint.hole-in-hole'
  // Roofs: `flat-instead` and `hip-instead` are notes, the building stands with a flat or a hipped roof.
  | 'roof.flat-instead'
  | 'roof.hip-instead'
  | 'roof.pitch'
  | 'roof.overhang'
  | 'roof.parapet'
  | 'roof.parapet-narrow'
  // Openings: each is left out, the rest of the structure stands.
  | 'opening.face'
  | 'opening.size'
  | 'opening.outside'
  | 'opening.high'
  | 'opening.overlaps'
  | 'opening.deep'
  | 'opening.corner'
  // Notes on hollow buildings.
  | 'building.block-instead'
  | 'opening.set-back'
  // Barriers.
  | 'barrier.corners'
  | 'barrier.repeated'
  | 'barrier.crosses'
  | 'barrier.touches'
  // Canopies and trees.
  | 'canopy.posts'
  | 'tree.clear'
  // Uneven ground: `repeated` and `filled` are notes; after the others the ground is flat.
  | 'ground.spots-repeated'
  | 'ground.spots-few'
  | 'ground.spots-line'
  | 'ground.filled'
  | 'ground.unknown'
  // The mesh could not be closed: nothing is built rather than something wrong.
  | 'solid.open'
  // Mounts.
  | 'mount.host'
  | 'mount.face'
  | 'mount.distance'
  | 'mount.height'
  | 'mount.opening'
  | 'mount.soffit'
  | 'mount.inset'
  | 'mount.inner-corner';

/** A fault of this room: code, the subject's name, where, and what was found and would be accepted. */
export function modelFault(
  code: ModelFaultCode,
  subject: string,
  path: readonly (string | number)[],
  about: { readonly given?: string | number; readonly allowed?: string } = {},
): Fault {
  return { code, path, subject, ...about };
}
