import type { Building, Structure } from '../../model/structure.ts';
import { chainOf, withCorners } from '../reshape/chainOf.ts';
import { alike, turnedRound, type Reshaped } from '../reshape/reshaped.ts';
import type { Motion } from './motion.ts';
import { ridgeMoved } from './ridgeMoved.ts';

/** A structure somewhere else. What is fixed to the edges of a mirrored one is the business of `mirroredEdges`. */
export function movedStructure(structure: Structure, motion: Motion): Structure {
  switch (structure.kind) {
    case 'tree':
      return { ...structure, at: motion.point(structure.at) };
    case 'vehicle':
      return {
        ...structure,
        at: motion.point(structure.at),
        heading: motion.bearing(structure.heading),
      };
    case 'building':
      return movedBuilding(structure, motion);
    default:
      return withCorners(structure, cornersMoved(structure, motion));
  }
}

function movedBuilding(building: Building, motion: Motion): Building {
  const outline = cornersMoved(building, motion);
  const ridge = ridgeMoved(building, outline, motion);
  const holes = building.holes.map((hole) => {
    const moved = hole.map(motion.point);
    return motion.mirrors ? moved.toReversed() : moved;
  });
  const roof = ridge === building.roof.ridge ? building.roof : { ...building.roof, ridge };
  return { ...building, outline, holes: building.holes.length === 0 ? building.holes : holes, roof };
}

const cornersMoved = (structure: Structure, motion: Motion) => {
  const edges = motion.mirrors ? mirroredEdges(structure, motion) : null;
  return edges ? edges.corners : (chainOf(structure)?.corners ?? []).map(motion.point);
};

/**
 * The corners of a mirrored outline, run round the way they ran, and where each edge went; null for a barrier, whose line is
 * kept as it was drawn, and for what has no corners. A canopy's posts stay at the same corners.
 */
export function mirroredEdges(structure: Structure, motion: Motion): Reshaped | null {
  const chain = chainOf(structure);
  if (!chain || structure.kind === 'barrier') return null;
  const first = structure.kind === 'canopy' ? Math.max(0, structure.posts - 1) : 0;
  return turnedRound(alike(chain, chain.corners.map(motion.point)), first % chain.corners.length);
}
