import { cos, sin } from '../../base/angle.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { HostFace } from '../../model/face.ts';
import { hostFaces } from '../../model/faces.ts';
import { groundHeight } from '../../model/ground.ts';
import { placeMount } from '../../model/mounting.ts';
import type { Mount } from '../../optics/mount.ts';
import { setMount } from '../../plan/commands/setMount.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { spotOn } from '../tools/mount/hostSpot.ts';
import type { HostSpot } from '../tools/mount/hostSpot.ts';
import { cornerFace, poleMount, soffitMount, wallMount } from '../tools/mount/mountAt.ts';
import { facesOf, hostsNear } from './hostChoices.ts';
import { heightBounds } from './mountSettings.ts';

export type MountKind = Exclude<Mount['kind'], 'loose'>;

/** Where the lens is now, if the mount works: the new mount keeps it as near to there as it can. */
export type Eye = Vec3 | null;

/** How far below the top of a wall a camera is fixed that was nowhere before, m. */
const BELOW_TOP = 0.3;

/** How far from a corner a camera is fixed that was around it, so that its plate has room, m. */
const OFF_CORNER = 0.2;

/**
 * The plan with a camera fixed in another way. The hole stays where it is as far as the new mount can be fixed there, and the
 * lens moves; where it cannot, the lens stays as near to where it was as can be. What the camera can turn to goes along.
 * @returns the same plan where no structure offers such a face
 */
export function setMountKind(plan: Plan, camera: PlanCamera, kind: MountKind, eye: Eye): Plan {
  const { mount } = camera;
  if (mount.kind === kind) return plan;
  const next = mountOfKind(plan, camera, kind, eye);
  if (!next) return plan;
  const limits = 'limits' in mount ? mount.limits : null;
  return setMount(plan, camera.id, limits && 'limits' in next ? { ...next, limits } : next);
}

function mountOfKind(plan: Plan, camera: PlanCamera, kind: MountKind, eye: Eye): Mount | null {
  if (kind === 'pole') return poleBehind(plan, camera, eye);
  const sort = kind === 'soffit' ? 'soffit' : 'wall';
  const held = 'host' in camera.mount ? camera.mount : null;
  const own = held ? facesOf(plan, held.host, sort) : [];
  const same = own.find((one) => one.face === held?.face);
  const face =
    same ??
    nearest(own, eye, plan) ??
    nearest(
      hostsNear(plan, eye ?? [0, 0], null).flatMap(({ id }) => facesOf(plan, id, sort)),
      eye,
      plan,
    );
  if (!face) return null;
  if (kind === 'corner') return aroundCorner(plan, face, camera, eye);
  const fresh = mountOn(plan, face, kind, eye);
  return same ? fixedAsBefore(plan, camera.mount, fresh, face) : fresh;
}

/** A mount on the face that carried the former, with its hole where that was. */
function fixedAsBefore(plan: Plan, before: Mount, fresh: Mount, face: HostFace): Mount {
  if (!('distance' in fresh)) return fresh;
  const place =
    'distance' in before
      ? { corner: before.corner, distance: before.distance }
      : { corner: 'start' as const, distance: Math.min(OFF_CORNER, face.width / 2) };
  const next = { ...fresh, ...place };
  if (!('height' in next)) return next;
  const hole = holeHeight(before);
  if (hole === null) return next;
  const { least, most } = heightBounds(plan, next, face);
  const height = Math.round((hole - (next.kind === 'arm' ? next.drop : 0)) * 1e6) / 1e6;
  return { ...next, height: Math.min(most, Math.max(least, height)) };
}

/** The hole above the ground, m; null where the mount does not say. */
function holeHeight(mount: Mount): number | null {
  if (mount.kind === 'arm') return mount.height + mount.drop;
  return mount.kind === 'flush' || mount.kind === 'corner' ? mount.height : null;
}

/** Around the nearer end of a face that is an outer corner, as high as the hole was; null where no end is one. */
function aroundCorner(plan: Plan, face: HostFace, { mount }: PlanCamera, eye: Eye): Mount | null {
  const structure = plan.structures[face.structure];
  const fresh = mountOn(plan, face, 'flush', eye);
  const like = mount.kind !== 'soffit' ? fixedAsBefore(plan, mount, fresh, face) : fresh;
  if (!structure || !('distance' in like) || !('height' in like)) return null;
  const near = like.distance <= face.width / 2 ? like.corner : like.corner === 'start' ? 'end' : 'start';
  for (const end of [near, near === 'start' ? 'end' : 'start'] as const) {
    const at = cornerFace(structure, face.face, end);
    const begun = hostFaces(structure).find((one) => one.sort === 'wall' && one.face === at);
    if (!begun) continue;
    const spot: HostSpot = { face: begun, along: 0, height: like.height, out: 0 };
    const corner = wallMount(spot, 'corner', structure);
    if (placeMount(corner, plan.structures, groundHeight(plan.ground)).ok) return corner;
  }
  return null;
}

/** The plan with a camera moved to another face: as far along it and as high as before, where that fits. */
export function setMountFace(plan: Plan, camera: PlanCamera, face: HostFace): Plan {
  const { mount } = camera;
  if (mount.kind === 'corner') {
    const around = aroundCorner(plan, face, camera, null);
    return around ? setMount(plan, camera.id, { ...mount, ...placeOf(around) }) : plan;
  }
  const kind = face.sort === 'soffit' ? 'soffit' : mount.kind === 'flush' ? 'flush' : 'arm';
  const fresh = mountOn(plan, face, kind, null);
  const place = {
    host: face.structure,
    face: face.face,
    ...('distance' in mount ? { distance: Math.min(mount.distance, face.width) } : {}),
  };
  // The same bracket goes along; another kind starts with its own sizes.
  const next = mount.kind === fresh.kind ? { ...mount, ...place } : { ...fresh, ...place };
  if (!('height' in next)) return setMount(plan, camera.id, next);
  const { least, most } = heightBounds(plan, next, face);
  return setMount(plan, camera.id, { ...next, height: Math.min(most, Math.max(least, next.height)) });
}

/** Where a corner mount is, without its bracket. */
function placeOf(mount: Mount): Partial<Extract<Mount, { kind: 'corner' }>> {
  return mount.kind === 'corner' ? { host: mount.host, face: mount.face, height: mount.height } : {};
}

function mountOn(plan: Plan, face: HostFace, kind: Exclude<MountKind, 'pole' | 'corner'>, eye: Eye): Mount {
  const spot = eye ? clamped(spotOn(face, eye, groundHeight(plan.ground)), plan) : middleOf(face, plan);
  if (kind === 'soffit') return soffitMount(spot);
  const mount = wallMount(spot, kind, undefined);
  if (!('height' in mount)) return mount;
  const { least, most } = heightBounds(plan, mount, face);
  return { ...mount, height: Math.min(most, Math.max(least, mount.height)) };
}

function clamped(spot: HostSpot, plan: Plan): HostSpot {
  const { face } = spot;
  const top = face.top - groundHeight(plan.ground);
  return {
    face,
    along: Math.min(face.width, Math.max(0, spot.along)),
    height: Math.min(top, spot.height),
    out: spot.out,
  };
}

const middleOf = (face: HostFace, plan: Plan): HostSpot => ({
  face,
  along: face.width / 2,
  height: Math.max(face.foot, face.top - BELOW_TOP) - groundHeight(plan.ground),
  out: face.depth / 2,
});

/** A pole whose arm points where the camera looks, so that it stands behind the lens and out of the picture. */
function poleBehind(plan: Plan, { pan }: PlanCamera, eye: Eye): Mount {
  if (!eye) return poleMount([0, 0], pan);
  const pole = poleMount([eye[0], eye[1]], pan, Math.max(0.5, eye[2] - groundHeight(plan.ground)));
  if (pole.kind !== 'pole') return pole;
  return { ...pole, at: [eye[0] - pole.reach * sin(pan), eye[1] - pole.reach * cos(pan)] };
}

/** The face that lies nearest to the lens, in plan. */
function nearest(faces: readonly HostFace[], eye: Eye, plan: Plan): HostFace | undefined {
  if (!eye) return faces[0];
  const away = (face: HostFace): number => {
    const { along } = clamped(spotOn(face, eye, groundHeight(plan.ground)), plan);
    return Math.hypot(
      face.start[0] + face.along[0] * along - eye[0],
      face.start[1] + face.along[1] * along - eye[1],
    );
  };
  return faces.toSorted((a, b) => away(a) - away(b))[0];
}
