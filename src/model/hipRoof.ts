import { tan } from '../base/angle.ts';
import type { Fault } from '../base/fault.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import { cornerNear, eavesOf, type Eaves } from './eaves.ts';
import type { Footprint } from './footprint.ts';
import { levelWalls } from './flatRoof.ts';
import { modelFault } from './modelFault.ts';
import { cornerAt } from './ring.ts';
import type { Loop, RoofShape } from './roofShape.ts';
import { straightSkeleton, type Skeleton } from './skeleton.ts';
import { between } from './straightRun.ts';
import type { Building } from './structure.ts';

/** A hip before it stands: its eaves, its skeleton, and where each node stands in space. */
export interface Hip {
  readonly eaves: Eaves;
  readonly skeleton: Skeleton;
  readonly points: readonly Vec3[];
}

export const raised = (p: Vec2, z: number): Vec3 => [p[0], p[1], z];

/** A plane of one pitch from each edge of the eaves; a fault that names the corner at which they cannot be joined. */
export function hipOf(
  building: Building,
  footprint: Footprint,
  eavesZ: number,
  overhang: number,
): Hip | Fault {
  const eaves = eavesOf(footprint, overhang);
  const skeleton = straightSkeleton(eaves.rings);
  if ('stuck' in skeleton) {
    const place = eaves.rings.flat()[skeleton.stuck] ?? cornerAt(footprint.outline, 0);
    const { index, words } = cornerNear(footprint, place);
    return modelFault('roof.flat-instead', building.name, ['outline', index], { given: words });
  }
  const slope = tan(building.roof.pitch);
  const points = skeleton.nodes.map(({ at, time }) => raised(at, eavesZ + time * slope));
  return { eaves, skeleton, points };
}

/** The faces of a hip. Without overhang they meet the tops of the walls, so they have every corner of those. */
export function hipLoops(footprint: Footprint, { eaves, skeleton, points }: Hip, eavesZ: number): Vec3[][] {
  const loops = skeleton.faces.map((face) => face.map((node) => points[node] ?? NOWHERE));
  if (isOnWalls(eaves)) {
    let edge = 0;
    for (const [r, { runs }] of eaves.walls.entries()) {
      const ring = r === 0 ? footprint.outline : (footprint.holes[r - 1] ?? []);
      for (const run of runs) {
        loops[edge]?.splice(1, 0, ...between(ring, run).map((corner) => raised(corner, eavesZ)));
        edge++;
      }
    }
  }
  return loops;
}

/** Every node of a face is one of the skeleton's. */
const NOWHERE: Vec3 = [Number.NaN, Number.NaN, Number.NaN];

/** Whether the eaves are the tops of the walls: no overhang. */
const isOnWalls = ({ rings, walls }: Eaves): boolean => rings[0]?.[0] === walls[0]?.ring[0];

export function hipRoof(footprint: Footprint, hip: Hip, eavesZ: number, overhang: number): RoofShape {
  return {
    kind: 'hip',
    ...levelWalls(footprint, eavesZ),
    faces: hipLoops(footprint, hip, eavesZ).map((loop): readonly Loop[] => [loop]),
    caps: [{ z: eavesZ, outside: 'down' }],
    soffitDepth: () => overhang,
    notes: [],
  };
}
