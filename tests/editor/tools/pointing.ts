import { cross, distance, dot, scale, subtract, unit, type Vec3 } from '../../../src/base/vector.ts';
import type { Pointed, Screen } from '../../../src/editor/tools/pointed.ts';
import { groundHeight } from '../../../src/model/ground.ts';
import { solidsOf } from '../../../src/model/solids.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { pick, pickable } from '../../../src/view3d/picking.ts';

/** Where the viewer stands, unless told otherwise: south of the house, high up. */
export const VIEWER: Vec3 = [2, -60, 45];

/** What a pointer stands on that points from the viewer at a place: the first solid before it, else the ground. */
export function pointing(plan: Plan, at: Vec3, more: Partial<Pointed> = {}, viewer: Vec3 = VIEWER): Pointed {
  const along = unit(subtract(at, viewer));
  const solids = plan.structureOrder.flatMap((id) => {
    const structure = plan.structures[id];
    return structure ? [...solidsOf(structure).solids] : [];
  });
  const hit = pick(pickable(solids), { from: viewer, along });
  const level = groundHeight(plan.ground);
  const toGround = (level - viewer[2]) / along[2];
  const ground: Vec3 | null =
    toGround > 0 ? [viewer[0] + along[0] * toGround, viewer[1] + along[1] * toGround, level] : null;
  const onSolid = hit !== null && (ground === null || hit.distance <= distance(viewer, ground));
  return {
    ray: { from: viewer, along },
    struck: onSolid
      ? { point: hit.point, normal: hit.normal, structure: hit.solid.structure }
      : ground && { point: ground, normal: [0, 0, 1], structure: null },
    handle: null,
    camera: null,
    lamp: null,
    metresPerPixel: 0.005,
    shift: false,
    free: false,
    by: 'mouse',
    grip: null,
    screen: screenFrom(viewer, at),
    ...more,
  };
}

/** A window that looks from the viewer at a place, 5 mm to the pixel there. */
function screenFrom(viewer: Vec3, at: Vec3): Screen {
  const ahead = unit(subtract(at, viewer));
  const right = unit(Math.hypot(ahead[0], ahead[1]) < 1e-9 ? [1, 0, 0] : cross(ahead, [0, 0, 1]));
  const up = cross(right, ahead);
  const gain = distance(at, viewer) / 0.005;
  return {
    spot: [0, 0],
    place: (point) => {
      const to = subtract(point, viewer);
      const depth = dot(to, ahead);
      return depth > 0 ? [(gain * dot(to, right)) / depth, (-gain * dot(to, up)) / depth] : null;
    },
    seen: () => true,
    plan: ahead[2] < -0.9999,
  };
}

/** A place a little to one side, as a pointer moves. */
export const moved = (from: Vec3, by: Vec3, share = 1): Vec3 => [
  from[0] + scale(by, share)[0],
  from[1] + scale(by, share)[1],
  from[2] + scale(by, share)[2],
];
