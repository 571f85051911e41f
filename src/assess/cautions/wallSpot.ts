import type { Vec2, Vec3 } from '../../base/vector.ts';
import { faceTopAt, hostFaces } from '../../model/faces.ts';
import type { HostFace } from '../../model/face.ts';
import { cornerAt } from '../../model/ring.ts';
import { difference, dotOf, heading, span } from '../../model/segment.ts';
import type { Opening, Service, Structure } from '../../model/structure.ts';
import type { Plate } from '../../optics/mount.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Fixing } from '../scene.ts';

/** Where on a wall a camera is fixed, in the wall's own measures as openings and services have them. */
export interface WallSpot {
  readonly structure: Structure;
  readonly face: HostFace;
  readonly plate: Plate;
  readonly hole: Vec3;
  /** Level, out of the wall. */
  readonly outward: Vec3;
  /** Of the hole: from the first corner of the edge as drawn, and above the structure's base, m. */
  readonly along: number;
  readonly height: number;
  /** Length of the edge, and of its top above the base where the hole is. */
  readonly length: number;
  readonly top: number;
  /** Null where the structure is one block. */
  readonly thickness: number | null;
  /** It goes around an outer corner, so that its plate lies on two walls. */
  readonly atCorner: boolean;
  readonly openings: readonly Opening[];
  readonly services: readonly Service[];
  /** A place of the wall, m along the edge as drawn and above the base. */
  at(along: number, height: number): Vec3;
}

/** The place of a camera on a wall; null for soffits, posts and what is fixed to nothing. */
export function wallSpotOf(plan: Plan, { mount }: PlanCamera, { hole, outward }: Fixing): WallSpot | null {
  if (hole === null || outward === null) return null;
  if (mount.kind !== 'flush' && mount.kind !== 'arm' && mount.kind !== 'corner') return null;
  const structure = plan.structures[mount.host];
  if (structure === undefined || structure.kind === 'tree' || structure.kind === 'vehicle') return null;
  const face = hostFaces(structure).find((one) => one.sort === 'wall' && one.face === mount.face);
  if (face === undefined) return null;
  const corners = structure.kind === 'barrier' ? structure.line : structure.outline;
  const closed = structure.kind !== 'barrier' || structure.closed;
  const edges = closed ? corners.length : corners.length - 1;
  const edge = face.face % Math.max(1, edges);
  const [a, b] = [cornerAt(corners, edge), cornerAt(corners, edge + 1)];
  const length = span(a, b);
  if (!(length > 0)) return null;
  const base = structure.kind === 'canopy' ? 0 : structure.base;
  const way = heading(a, b);
  const along = dotOf(difference([hole[0], hole[1]], a), way);
  const faceStart: Vec2 = [face.start[0], face.start[1]];
  const onFace = dotOf(difference([hole[0], hole[1]], faceStart), [face.along[0], face.along[1]]);
  // A barrier's sides stand off the line that is drawn.
  const off = dotOf(difference(faceStart, a), [face.outward[0], face.outward[1]]);
  return {
    structure,
    face,
    plate: mount.plate,
    hole,
    outward,
    along,
    height: hole[2] - base,
    length,
    top: faceTopAt(face, onFace) - base,
    thickness:
      structure.kind === 'building'
        ? structure.wallThickness
        : structure.kind === 'barrier'
          ? structure.thickness
          : null,
    atCorner: mount.kind === 'corner',
    openings: 'openings' in structure ? structure.openings.filter((one) => one.face === edge) : [],
    services: structure.kind === 'building' ? structure.services.filter((one) => one.face === edge) : [],
    at: (s, z) => [
      a[0] + way[0] * s + face.outward[0] * off,
      a[1] + way[1] * s + face.outward[1] * off,
      base + z,
    ],
  };
}
