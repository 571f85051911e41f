import { dot, subtract, type Vec3 } from '../../../base/vector.ts';
import type { HostFace } from '../../../model/face.ts';
import { hostFaces } from '../../../model/faces.ts';
import { groundHeight } from '../../../model/ground.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Struck } from '../pointed.ts';

/** A spot on a face: metres along it from its start, and above the ground. */
export interface HostSpot {
  readonly face: HostFace;
  readonly along: number;
  readonly height: number;
  /** Before the wall; for a soffit, how far out from the wall below it. */
  readonly out: number;
}

/** How far in front of or behind a wall's plane its openings and sills may lie, m. */
const RECESS = 0.35;
const FACING = 0.97;

/** The face of a structure on which a point lies; null where no mount can be fixed there. */
export function hostSpot(plan: Plan, struck: Struck): HostSpot | null {
  const structure = struck.structure === null ? undefined : plan.structures[struck.structure];
  if (!structure) return null;
  let best: HostSpot | null = null;
  let nearest = Infinity;
  for (const face of hostFaces(structure)) {
    const spot = spotOn(face, struck.point, groundHeight(plan.ground));
    if (face.sort === 'wall') {
      const off = Math.abs(dot(subtract(struck.point, face.start), face.outward));
      const within = spot.along > -RECESS && spot.along < face.width + RECESS;
      if (dot(struck.normal, face.outward) < FACING || off > RECESS || !within || off >= nearest) continue;
      [best, nearest] = [kept(spot), off];
    } else {
      const off = Math.abs(struck.point[2] - face.top);
      const within = spot.along > -face.depth && spot.along < face.width + face.depth && spot.out > -RECESS;
      if (struck.normal[2] > -FACING || off > 0.02 || !within || spot.out > face.depth + 0.02) continue;
      if (Math.abs(spot.out) < nearest) [best, nearest] = [kept(spot), Math.abs(spot.out)];
    }
  }
  return best;
}

/** The soffit that hangs over a wall; null where there is none. */
export function soffitOver(plan: Plan, wall: HostFace): HostFace | null {
  const structure = plan.structures[wall.structure];
  return (
    (structure && hostFaces(structure).find(({ sort, face }) => sort === 'soffit' && face === wall.face)) ??
    null
  );
}

/** The measures of a point on a face. */
export function spotOn(face: HostFace, point: Vec3, ground: number): HostSpot {
  const from = subtract(point, face.start);
  return {
    face,
    along: dot(from, face.along),
    height: point[2] - ground,
    out: dot(from, face.outward),
  };
}

const kept = (spot: HostSpot): HostSpot => ({
  ...spot,
  along: Math.min(spot.face.width, Math.max(0, spot.along)),
});
