import { add, scale, type Vec3 } from '../../../base/vector.ts';
import type { HostFace } from '../../../model/face.ts';
import { groundHeight } from '../../../model/ground.ts';
import { placeMount } from '../../../model/mounting.ts';
import type { Mount } from '../../../optics/mount.ts';
import { faultText } from '../../../plan/faultText.ts';
import type { Plan } from '../../../plan/plan.ts';
import { faceOf } from '../mount/faceOf.ts';
import { hostSpot, soffitOver, spotOn, type HostSpot } from '../mount/hostSpot.ts';
import { poleMount, soffitMount, wallMount, type WallKind } from '../mount/mountAt.ts';
import { alongCandidates, heightCandidates } from '../mount/snaps.ts';
import type { Pointed } from '../pointed.ts';
import { snap } from '../snap.ts';

/** Where a new camera would go, or why it cannot. */
export type Candidate =
  | {
      readonly fits: true;
      readonly mount: Mount;
      readonly face: HostFace | null;
      readonly eye: Vec3;
      readonly outward: Vec3 | null;
      readonly snapped: string | null;
    }
  | { readonly fits: false; readonly why: string };

const EAVES_PIXELS = 14;
const EAVES_REACH = 0.15;

const no = (why: string): Candidate => ({ fits: false, why });

/** The mount that fits where a pointer is: a wall's, a soffit's, or a post on the ground. */
export function candidateAt(plan: Plan, at: Pointed, kind: WallKind): Candidate {
  const { struck } = at;
  if (!struck) return no('Point at a wall, up under the eaves, or at the ground for a post.');
  if (struck.structure === null) {
    const place = (value: number): number => snap(value, [], at.metresPerPixel, at.free).value;
    return placed(plan, poleMount([place(struck.point[0]), place(struck.point[1])], 180), null);
  }
  if (Object.hasOwn(plan.cameras, struck.structure)) return no('Another camera’s post stands here.');
  const spot = hostSpot(plan, struck);
  if (!spot) return no('No bracket fits here. Point at a wall, up under the eaves, or at the ground.');
  if (spot.face.sort === 'soffit') return placed(plan, soffitMount(spot), null);
  const soffit = soffitOver(plan, spot.face);
  const below = spot.face.top - struck.point[2];
  if (soffit && below < Math.max(EAVES_REACH, EAVES_PIXELS * at.metresPerPixel)) {
    const under = spotOn(soffit, struck.point, groundHeight(plan.ground));
    return placed(plan, soffitMount({ ...under, out: soffit.depth / 2 }), null);
  }
  return onWall(plan, spot, at, kind);
}

function onWall(plan: Plan, spot: HostSpot, at: Pointed, kind: WallKind): Candidate {
  const along = snap(spot.along, alongCandidates(plan, spot.face), at.metresPerPixel, at.free);
  const height = snap(spot.height, heightCandidates(plan, null), at.metresPerPixel, at.free);
  const structure = plan.structures[spot.face.structure];
  const within = Math.min(spot.face.width, Math.max(0, along.value));
  const mount = wallMount({ ...spot, along: within, height: height.value }, kind, structure);
  return placed(plan, mount, along.name ?? height.name);
}

/** The candidate with another height, or distance from the corner that it names. */
export function candidateWith(plan: Plan, mount: Mount, key: string, value: number): Candidate {
  if (key === 'height' && 'height' in mount) return placed(plan, { ...mount, height: value }, null);
  if (key === 'distance' && 'distance' in mount) return placed(plan, { ...mount, distance: value }, null);
  if (key === 'diameter' && 'diameter' in mount) return placed(plan, { ...mount, diameter: value }, null);
  return no('This mount has no such measure.');
}

/** A mount as a candidate: where its lens would be, or why it does not fit. */
export function placed(plan: Plan, mount: Mount, snapped: string | null): Candidate {
  const at = placeMount(mount, plan.structures, groundHeight(plan.ground));
  // What stands in the way is the camera's place, which has no name yet and no path in the plan.
  if (!at.ok)
    return no(at.faults.map((fault) => faultText({ ...fault, subject: undefined, path: [] })).join(' '));
  return {
    fits: true,
    mount,
    face: faceOf(plan, mount),
    eye: at.value.eye,
    outward: at.value.outward,
    snapped,
  };
}

/** The corners of a face, for its outline in the Model. */
export function faceCorners(face: HostFace): Vec3[] {
  const end = add(face.start, scale(face.along, face.width));
  if (face.sort === 'wall') {
    const lift = ([x, y]: Vec3, z: number): Vec3 => [x, y, z];
    return [
      lift(face.start, face.foot),
      lift(end, face.foot),
      lift(end, face.top),
      lift(face.start, face.top),
    ];
  }
  const out = scale(face.outward, face.depth);
  return [face.start, end, add(end, out), add(face.start, out)];
}
