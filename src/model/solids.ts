import { barrierSolids } from './barrier.ts';
import { blockSolids } from './block.ts';
import { buildingSolids } from './building.ts';
import { canopySolids } from './canopy.ts';
import type { Made } from './made.ts';
import type { Structure } from './structure.ts';
import { treeSolids } from './tree.ts';
import { vehicleSolids } from './vehicle.ts';

/**
 * What a structure blocks views with: closed meshes, outward, in the site frame, m. A structure hidden in the picture
 * blocks as before. What cannot be made as drawn is left out or made plainer, and a fault says so; paths run from the
 * structure.
 * @param ground  height of flat ground, on which the posts of canopies stand
 */
export function solidsOf(structure: Structure, ground = 0): Made {
  switch (structure.kind) {
    case 'building':
      return buildingSolids(structure);
    case 'barrier':
      return barrierSolids(structure);
    case 'canopy':
      return canopySolids(structure, ground);
    case 'tree':
      return treeSolids(structure);
    case 'vehicle':
      return vehicleSolids(structure);
    case 'block':
      return blockSolids(structure);
  }
}
