import { cos, sin } from '../base/angle.ts';
import { accept, refuse, type Fault, type Outcome } from '../base/fault.ts';
import { MOUNT_CLEARANCE, SAME_POINT } from '../base/tolerance.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import type { ArmMount, CornerMount, FlushMount, Mount, PoleMount, SoffitMount } from '../optics/mount.ts';
import type { HostFace } from './face.ts';
import { faceTopAt, hostFaces, pointOnFace } from './faces.ts';
import { modelFault } from './modelFault.ts';
import { openingAt } from './openingAt.ts';
import { inRing } from './ring.ts';
import { crossOf, moved } from './segment.ts';
import { numberFaults } from './size.ts';
import type { Structure } from './structure.ts';
import { roundReach } from './tree.ts';

/** Where a mount leads. Site frame, m. */
export interface Placed {
  /** The entrance pupil. */
  readonly eye: Vec3;
  /** The hole; for a pole the foot of its post, null for a loose camera. */
  readonly hole: Vec3 | null;
  /** Level direction straight out from the wall; null without one. For a soffit that of the wall below. */
  readonly outward: Vec3 | null;
  /** "South wall of House"; null without a host. */
  readonly host: string | null;
}

type Structures = Readonly<Record<string, Structure>>;

/**
 * Leads from a mount to its lens. The lens stays at least `MOUNT_CLEARANCE` off what it is fixed to.
 * Faults (path from the mount): the host or face is gone, the hole lies beside the face, above its top, below its
 * foot or in an opening, there is no soffit, or the corner is not an outer one.
 * @param ground  height of the ground that mounting heights are measured from
 */
export function placeMount(mount: Mount, structures: Structures, ground = 0): Outcome<Placed> {
  const wrong = mountNumberFaults(mount);
  if (wrong.length > 0) return refuse(...wrong);
  switch (mount.kind) {
    case 'flush':
    case 'arm':
      return onWall(mount, structures, ground);
    case 'soffit':
      return underSoffit(mount, structures);
    case 'corner':
      return aroundCorner(mount, structures, ground);
    case 'pole':
      return onPole(mount, ground);
    case 'loose':
      return accept({ eye: mount.eye, hole: null, outward: null, host: null });
  }
}

function mountNumberFaults(mount: Mount): Fault[] {
  return Object.entries(mount).flatMap(([key, value]: [string, unknown]) => {
    if (typeof value === 'number') return numberFaults(value, [key], 'Mount');
    if (!Array.isArray(value)) return [];
    return value.flatMap((entry: unknown, k) =>
      typeof entry === 'number' ? numberFaults(entry, [key, k], 'Mount') : [],
    );
  });
}

const metres = (value: number): string => `${Math.round(value * 1000) / 1000} m`;

interface Host {
  readonly structure: Structure;
  readonly face: HostFace;
  readonly faces: readonly HostFace[];
}

/** The face that a mount names. */
function hostOf(
  mount: { readonly host: string; readonly face: number },
  structures: Structures,
  sort: HostFace['sort'],
): Outcome<Host> {
  const structure = Object.hasOwn(structures, mount.host) ? structures[mount.host] : undefined;
  if (!structure) {
    const about = { given: mount.host, allowed: 'a building, wall, block or canopy of this plan' };
    return refuse(modelFault('mount.host', 'Mount', ['host'], about));
  }
  const faces = hostFaces(structure);
  const face = faces.find((candidate) => candidate.face === mount.face && candidate.sort === sort);
  if (face) return accept({ structure, face, faces });
  if (sort === 'soffit' && faces.some((candidate) => candidate.face === mount.face)) {
    const about = { given: mount.face + 1, allowed: 'a wall that the roof overhangs' };
    return refuse(modelFault('mount.soffit', structure.name, ['face'], about));
  }
  const names = faces.filter((candidate) => candidate.sort === sort).map(({ name }) => name);
  const allowed = names.length > 0 ? names.join(', ') : `a structure with a ${sort}`;
  return refuse(modelFault('mount.face', structure.name, ['face'], { given: mount.face + 1, allowed }));
}

/** Metres along the face from its start, or why there is no such place. */
function along(mount: FlushMount | ArmMount | SoffitMount, { structure, face }: Host): Outcome<number> {
  const { distance } = mount;
  if (distance < 0 || distance > face.width + SAME_POINT) {
    const allowed = `from 0 to ${metres(face.width)} along the ${face.name.toLowerCase()}`;
    return refuse(modelFault('mount.distance', structure.name, ['distance'], { given: distance, allowed }));
  }
  return accept(mount.corner === 'start' ? distance : face.width - distance);
}

/** What is wrong with a hole at height `z`, `s` along a wall; mounting heights are `offset` lower than the hole. */
function heightFault(host: Host, s: number, z: number, offset: number): Fault | null {
  const { structure, face, faces } = host;
  const isUnderSoffit = faces.some((other) => other.sort === 'soffit' && other.face === face.face);
  const top = faceTopAt(face, s) - (isUnderSoffit ? MOUNT_CLEARANCE : 0);
  if (z >= face.foot - SAME_POINT && z <= top + SAME_POINT) return null;
  const allowed = `from ${metres(face.foot - offset)} to ${metres(top - offset)}`;
  // A height above the ground, without the last bits of taking one from the other.
  const given = Math.round((z - offset) * 1e6) / 1e6;
  return modelFault('mount.height', structure.name, ['height'], { given, allowed });
}

const named = ({ structure, face }: Host): string => `${face.name} of ${structure.name}`;

function onWall(mount: FlushMount | ArmMount, structures: Structures, ground: number): Outcome<Placed> {
  const host = hostOf(mount, structures, 'wall');
  if (!host.ok) return host;
  const s = along(mount, host.value);
  if (!s.ok) return s;
  const { face, structure } = host.value;
  const eyeZ = ground + mount.height;
  const drop = mount.kind === 'arm' ? mount.drop : 0;
  const out = Math.max(mount.kind === 'arm' ? mount.reach : mount.standOff, MOUNT_CLEARANCE);
  const wrong = heightFault(host.value, s.value, eyeZ + drop, ground + drop);
  if (wrong) return refuse(wrong);
  const place = pointOnFace(face, s.value);
  const opening = openingAt(structure, face.face, place, eyeZ + drop);
  if (opening) {
    const about = { given: opening.name, allowed: 'a place beside or above it' };
    return refuse(modelFault('mount.opening', structure.name, ['distance'], about));
  }
  return accept({
    eye: [place[0] + face.outward[0] * out, place[1] + face.outward[1] * out, eyeZ],
    hole: [place[0], place[1], eyeZ + drop],
    outward: face.outward,
    host: named(host.value),
  });
}

function underSoffit(mount: SoffitMount, structures: Structures): Outcome<Placed> {
  const host = hostOf(mount, structures, 'soffit');
  if (!host.ok) return host;
  const s = along(mount, host.value);
  if (!s.ok) return s;
  const { face, structure } = host.value;
  const insetFault = (): Outcome<Placed> => {
    const allowed = `from 0 to ${metres(face.depth)} out from the wall`;
    return refuse(modelFault('mount.inset', structure.name, ['inset'], { given: mount.inset, allowed }));
  };
  if (mount.inset < 0 || mount.inset > face.depth + SAME_POINT) return insetFault();
  const inset = structure.kind === 'canopy' ? mount.inset : Math.max(mount.inset, MOUNT_CLEARANCE);
  const place = moved(pointOnFace(face, s.value), [face.outward[0], face.outward[1]], inset);
  // A canopy or room that is no rectangle may end before its greatest depth.
  const nudged = moved(place, [face.outward[0], face.outward[1]], -SAME_POINT);
  if (face.within && inset > SAME_POINT && !inRing(nudged, face.within)) return insetFault();
  return accept({
    eye: [place[0], place[1], face.top - Math.max(mount.drop, MOUNT_CLEARANCE)],
    hole: [place[0], place[1], face.top],
    outward: face.outward,
    host: named(host.value),
  });
}

function aroundCorner(mount: CornerMount, structures: Structures, ground: number): Outcome<Placed> {
  const host = hostOf(mount, structures, 'wall');
  if (!host.ok) return host;
  const { structure, face, faces } = host.value;
  const before = faceBefore(structure, faces, face);
  // Along a face that is seen with its start on the left a corner points outwards where the way turns to the left.
  const side = crossOf([face.outward[0], face.outward[1]], [face.along[0], face.along[1]]) > 0 ? 1 : -1;
  const turns = before
    ? side * crossOf([before.along[0], before.along[1]], [face.along[0], face.along[1]])
    : -Infinity;
  if (!before || turns < 1e-6) {
    const about = { given: mount.face + 1, allowed: 'a corner of a wall or block that points outwards' };
    return refuse(modelFault('mount.inner-corner', structure.name, ['face'], about));
  }
  const z = ground + mount.height;
  const wrong = heightFault(host.value, 0, z, ground);
  if (wrong) return refuse(wrong);
  const sum: Vec2 = [before.outward[0] + face.outward[0], before.outward[1] + face.outward[1]];
  const size = Math.hypot(...sum);
  const outward: Vec3 = [sum[0] / size, sum[1] / size, 0];
  const out = Math.max(mount.reach, MOUNT_CLEARANCE);
  const corner = pointOnFace(face, 0);
  return accept({
    eye: [corner[0] + outward[0] * out, corner[1] + outward[1] * out, z],
    hole: [corner[0], corner[1], z],
    outward,
    host: `Corner of the ${before.name.toLowerCase()} and the ${face.name.toLowerCase()} of ${structure.name}`,
  });
}

/** The wall that ends where a face begins, on the same side of a barrier; null at the free end of one. */
function faceBefore(structure: Structure, faces: readonly HostFace[], face: HostFace): HostFace | null {
  const drawn = structure.kind === 'barrier' ? structure.line.length - (structure.closed ? 0 : 1) : Infinity;
  const walls = faces.filter(({ sort, face: n }) => sort === 'wall' && n < drawn === face.face < drawn);
  const at = walls.indexOf(face);
  if (at === 0 && structure.kind === 'barrier' && !structure.closed) return null;
  return walls[(at - 1 + walls.length) % walls.length] ?? null;
}

function onPole(mount: PoleMount, ground: number): Outcome<Placed> {
  const [x, y] = mount.at;
  const out = Math.max(mount.reach, roundReach(mount.diameter) + MOUNT_CLEARANCE);
  return accept({
    eye: [x + out * sin(mount.facing), y + out * cos(mount.facing), ground + mount.height],
    hole: [x, y, ground],
    outward: null,
    host: null,
  });
}
