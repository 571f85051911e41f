import { accept, refuse, type Outcome } from '../../base/fault.ts';
import { SAME_POINT } from '../../base/tolerance.ts';
import type { Vec2 } from '../../base/vector.ts';
import { hostFaces } from '../../model/faces.ts';
import { cornerAt } from '../../model/ring.ts';
import { difference, dotOf, heading } from '../../model/segment.ts';
import type { Structure } from '../../model/structure.ts';
import type { ArmMount, CornerMount, FlushMount, Mount, SoffitMount } from '../../optics/mount.ts';
import { changed } from '../commands/changed.ts';
import { chainOf } from './chainOf.ts';
import { edgeCount, isClockwise, type EdgePart, type Reshaped } from './reshaped.ts';

type Hosted = FlushMount | ArmMount | SoffitMount;
type End = 'start' | 'end';

const otherEnd = (end: End): End => (end === 'start' ? 'end' : 'start');

/**
 * A mount on the new corners of its host: on the face that its face became, as far from its named corner. Where that corner
 * is gone it is measured from the other end, and stays where it was along the old face.
 * @param name what the camera is called, for the fault
 */
export function carriedMount(
  mount: Hosted | CornerMount,
  name: string,
  before: Structure,
  after: Structure,
  reshaped: Reshaped,
): Outcome<Mount> {
  const [was, is] = [chainOf(before), chainOf(after)];
  if (!was || !is) return accept(mount);
  // The faces of a ring run counter-clockwise however it was drawn, those of a barrier along its line.
  const isRing = before.kind !== 'barrier';
  const [turnedBefore, turnedAfter] = [was, is].map(({ corners }) => isRing && isClockwise(corners));
  const count = edgeCount(was);
  if (mount.kind === 'corner' && !isRing) {
    const corner = reshaped.numbers[mount.face % Math.max(1, count)];
    if (mount.face >= 2 * count || corner === undefined) return accept(mount);
    if (corner === null || corner >= edgeCount(is))
      return refuse({ code: 'edit.cornerCamera', path: [], subject: name });
    const isRight = mount.face >= count !== reshaped.reversed;
    return accept(changed(mount, { face: corner + (isRight ? edgeCount(is) : 0) }));
  }
  if (mount.kind === 'corner') {
    const corner = reshaped.numbers[(mount.face + (turnedBefore ? 1 : 0)) % was.corners.length];
    if (mount.face >= count || corner === undefined) return accept(mount);
    if (corner === null) return refuse({ code: 'edit.cornerCamera', path: [], subject: name });
    const size = is.corners.length;
    return accept(changed(mount, { face: (corner + (turnedAfter ? size - 1 : 0)) % size }));
  }

  const edge = mount.face % Math.max(1, count);
  // Of a barrier its right-hand side, of a hollow building the ceiling behind the wall.
  const isSecond = mount.face >= count;
  const parts = reshaped.parts[edge];
  if (!parts || mount.face >= 2 * count) return accept(mount);
  const [only] = parts;
  if (!only) return refuse({ code: 'edit.wallGone', path: [], subject: name });
  const faceOn = (part: EdgePart): number => part.edge + (isSecond ? edgeCount(is) : 0);
  if (only.start && only.end) {
    const isTurned = (turnedBefore !== turnedAfter) !== reshaped.reversed;
    const corner = isTurned ? otherEnd(mount.corner) : mount.corner;
    return accept(changed<Hosted>(mount, { face: faceOn(only), corner }));
  }

  const sort = mount.kind === 'soffit' ? 'soffit' : 'wall';
  const way = (corners: readonly Vec2[], at: number): Vec2 =>
    heading(cornerAt(corners, at), cornerAt(corners, at + 1));
  const extentBefore = extentOf(
    before,
    mount.face,
    sort,
    cornerAt(was.corners, edge),
    way(was.corners, edge),
  );
  if (!extentBefore) return accept(changed<Hosted>(mount, { face: faceOn(only) }));
  const named: End = extentBefore.isForward ? mount.corner : otherEnd(mount.corner);
  const place = named === 'start' ? extentBefore.from + mount.distance : extentBefore.to - mount.distance;
  const part = parts.find(({ from, to }) => place >= from && place <= to) ?? only;
  const face = faceOn(part);
  const first = cornerAt(is.corners, part.edge + (reshaped.reversed ? 1 : 0));
  const along = way(is.corners, part.edge);
  const forward: Vec2 = reshaped.reversed ? [0 - along[0], 0 - along[1]] : along;
  const extent = extentOf(after, face, sort, first, forward);
  if (!extent) return refuse({ code: 'edit.wallGone', path: [], subject: name });
  const isKept = named === 'start' ? part.start : part.end;
  const end: End = isKept ? named : part.end ? 'end' : 'start';
  const moved = place + part.shift;
  const measured = end === 'start' ? moved - extent.from : extent.to - moved;
  const distance = isKept ? mount.distance : measured;
  if (distance < -SAME_POINT) return refuse({ code: 'edit.noRoom', path: [], subject: name });
  const corner = extent.isForward ? end : otherEnd(end);
  return accept(changed<Hosted>(mount, { face, corner, distance: Math.max(0, distance) }));
}

/** From where to where a face runs along a line, m from a point of it; `isForward`: it begins at its near end. */
function extentOf(
  structure: Structure,
  number: number,
  sort: 'wall' | 'soffit',
  from: Vec2,
  way: Vec2,
): { readonly from: number; readonly to: number; readonly isForward: boolean } | null {
  const face = hostFaces(structure).find((other) => other.face === number && other.sort === sort);
  if (!face) return null;
  const near = dotOf(difference([face.start[0], face.start[1]], from), way);
  const isForward = dotOf([face.along[0], face.along[1]], way) > 0;
  return isForward
    ? { from: near, to: near + face.width, isForward }
    : { from: near - face.width, to: near, isForward };
}
