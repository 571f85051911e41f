import { add, dot, scale, subtract, type Vec3 } from '../../../base/vector.ts';
import { hostFaces } from '../../../model/faces.ts';
import type { HostFace } from '../../../model/face.ts';
import type { Mount } from '../../../optics/mount.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Pointed } from '../pointed.ts';
import { snap, type Snapped } from '../snap.ts';
import { faceOf } from './faceOf.ts';
import { hostSpot, spotOn } from './hostSpot.ts';
import { alongCandidates, heightCandidates } from './snaps.ts';

/** Where a drag brought a mount. `snapped` names what it snapped to; `edgeOn` is a face too flat to the view to drag on. */
export interface Slid {
  readonly mount: Mount;
  readonly snapped: string | null;
  readonly edgeOn: boolean;
}

const LEAST_HEIGHT = 0.1;
/** Below this share a face is seen edge-on: sine of 7°. */
const EDGE_ON = Math.sin((7 * Math.PI) / 180);

/**
 * A mount dragged over what carries it: along and up its wall and round its corners, under its soffit, over the ground.
 * @param eye  of the lens at the press
 * @param from the pointer at the press
 */
export function slideMount(
  plan: Plan,
  camera: string,
  mount: Mount,
  eye: Vec3,
  from: Pointed,
  to: Pointed,
): Slid {
  const face = faceOf(plan, mount);
  switch (mount.kind) {
    case 'flush':
    case 'arm':
      return face ? onWall(plan, camera, mount, face, eye, from, to) : still(mount);
    case 'soffit':
      return face ? underSoffit(plan, mount, face, eye, from, to) : still(mount);
    case 'corner': {
      const upright: Vec3 = [from.ray.along[0], from.ray.along[1], 0];
      const run = movement(eye, upright, from, to);
      if (!run) return { ...still(mount), edgeOn: true };
      const { value, name } = height(plan, camera, mount.height + run[2], to);
      return { mount: { ...mount, height: value }, snapped: name, edgeOn: false };
    }
    case 'pole':
    case 'loose': {
      const run = movement(eye, [0, 0, 1], from, to);
      if (!run) return { ...still(mount), edgeOn: true };
      const [dx, dy] = oneWay(run[0], run[1], to.shift);
      const place = (value: number): number => snap(value, [], to.metresPerPixel, to.free).value;
      if (mount.kind === 'pole')
        return {
          ...still(mount),
          mount: { ...mount, at: [place(mount.at[0] + dx), place(mount.at[1] + dy)] },
        };
      const [x, y, z] = mount.eye;
      return { ...still(mount), mount: { ...mount, eye: [place(x + dx), place(y + dy), z] } };
    }
  }
}

const still = (mount: Mount): Slid => ({ mount, snapped: null, edgeOn: false });

type Walled = Extract<Mount, { kind: 'flush' | 'arm' }>;

function onWall(
  plan: Plan,
  camera: string,
  mount: Walled,
  face: HostFace,
  eye: Vec3,
  from: Pointed,
  to: Pointed,
): Slid {
  const run = movement(eye, face.outward, from, to);
  if (!run) return { ...still(mount), edgeOn: true };
  const [sideways, up] = oneWay(dot(run, face.along), run[2], to.shift);
  const start = mount.corner === 'start' ? mount.distance : face.width - mount.distance;
  const along = start + sideways;
  if (along < 0 || along > face.width) {
    const spot = to.struck && hostSpot(plan, to.struck);
    if (
      spot &&
      spot.face.sort === 'wall' &&
      spot.face.structure === face.structure &&
      spot.face.face !== face.face
    ) {
      const tall = height(plan, camera, spot.height, to);
      return { ...placed(plan, { ...mount, height: tall.value }, spot.face, spot.along, to), edgeOn: false };
    }
  }
  const tall = height(plan, camera, mount.height + up, to);
  const moved = placed(
    plan,
    { ...mount, height: tall.value },
    face,
    Math.min(face.width, Math.max(0, along)),
    to,
  );
  return { ...moved, snapped: tall.name ?? moved.snapped };
}

function underSoffit(
  plan: Plan,
  mount: Extract<Mount, { kind: 'soffit' }>,
  face: HostFace,
  eye: Vec3,
  from: Pointed,
  to: Pointed,
): Slid {
  const run = movement(eye, [0, 0, 1], from, to);
  if (!run) return { ...still(mount), edgeOn: true };
  const start = mount.corner === 'start' ? mount.distance : face.width - mount.distance;
  const { outward } = face;
  const [sideways, out] = oneWay(dot(run, face.along), dot(run, outward), to.shift);
  const at = add(face.start, add(scale(face.along, start + sideways), scale(outward, mount.inset + out)));
  const next = soffitUnder(plan, face, at);
  const spot = spotOn(next, at, 0);
  const inset = snap(spot.out, [], to.metresPerPixel, to.free).value;
  const within = Math.min(next.depth - 0.02, Math.max(0.02, inset));
  return placed(plan, { ...mount, inset: within }, next, Math.min(next.width, Math.max(0, spot.along)), to);
}

/** The soffit of the same structure that a point has come under, else the same as before. */
function soffitUnder(plan: Plan, face: HostFace, point: Vec3): HostFace {
  const structure = plan.structures[face.structure];
  const fits = (one: HostFace): boolean => {
    const { along, out } = spotOn(one, point, 0);
    return one.sort === 'soffit' && along >= 0 && along <= one.width && out >= 0 && out <= one.depth;
  };
  if (!structure || fits(face)) return face;
  return hostFaces(structure).find(fits) ?? face;
}

/** A hosted mount at a distance along a face, from the corner that it had, or on another face from the nearer one. */
function placed<M extends Extract<Mount, { corner: 'start' | 'end' }>>(
  plan: Plan,
  mount: M,
  face: HostFace,
  along: number,
  to: Pointed,
): Slid {
  const same = mount.face === face.face;
  const corner = same ? mount.corner : along <= face.width / 2 ? 'start' : 'end';
  const width = face.width;
  const fromCorner = (value: number): number => (corner === 'start' ? value : width - value);
  const candidates = alongCandidates(plan, face).map((one) => ({ ...one, value: fromCorner(one.value) }));
  const { value, name } = snap(fromCorner(along), candidates, to.metresPerPixel, to.free);
  const distance = Math.min(width, Math.max(0, value));
  return { mount: { ...mount, face: face.face, corner, distance }, snapped: name, edgeOn: false };
}

function height(plan: Plan, camera: string, value: number, to: Pointed): Snapped {
  const snapped = snap(value, heightCandidates(plan, camera), to.metresPerPixel, to.free);
  return { ...snapped, value: Math.max(LEAST_HEIGHT, snapped.value) };
}

/** How far the pointer moved on the plane through a point; null where that plane is seen edge-on. */
function movement(through: Vec3, normal: Vec3, from: Pointed, to: Pointed): Vec3 | null {
  const a = onPlane(through, normal, from);
  const b = onPlane(through, normal, to);
  return a && b ? subtract(b, a) : null;
}

function onPlane(through: Vec3, normal: Vec3, { ray }: Pointed): Vec3 | null {
  const size = Math.hypot(...normal);
  const down = dot(ray.along, normal) / size;
  if (Math.abs(down) < EDGE_ON) return null;
  const t = dot(subtract(through, ray.from), normal) / size / down;
  return t > 0 ? add(ray.from, scale(ray.along, t)) : null;
}

/** Both parts of a movement, or with Shift the larger alone. */
const oneWay = (a: number, b: number, shift: boolean): [number, number] =>
  !shift ? [a, b] : Math.abs(a) >= Math.abs(b) ? [a, 0] : [0, b];
