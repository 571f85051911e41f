import { dot, type Vec3 } from '../base/vector.ts';
import { reachStrip } from '../coverage/reach.ts';
import type { Camera } from '../optics/camera.ts';
import { footingOf, type Footing } from '../sight/footing.ts';
import { frameSides } from '../sight/frame.ts';
import type { Plane } from '../base/plane.ts';
import type { Box } from './solidsChange.ts';

/** Where a camera looks: its target surface, the level that its frame is drawn down to, and the cells between. */
interface Looked {
  readonly plane: Plane;
  readonly floor: Plane;
  readonly cell: number;
}

/** Cells beside the frame count as edges of its areas: a box is taken as so many cells larger, and 1 mm against rounding. */
const CELLS_BESIDE = 2;
const ROUNDING = 0.001;

/**
 * Tells which boxes can touch anything of a camera's coverage. One misses it that lies wholly outside the pyramid of its
 * frame or beyond the planes that it looks at, and outside the strip along which its reach is told. Range hides nothing
 * and is not asked.
 */
export function touching(camera: Camera, { plane, floor, cell }: Looked): (box: Box) => boolean {
  const footing = footingOf(camera.eye, plane);
  const ground = floor === plane ? footing : footingOf(camera.eye, floor);
  const sides = frameSides(camera);
  const strip = stripSides(camera, footing);
  const grown = CELLS_BESIDE * cell + ROUNDING;
  return (box) => {
    const corners = cornersOf(box, grown, camera.eye);
    if (isBeyond(corners, footing) && isBeyond(corners, ground)) return false;
    return !isOutside(corners, sides) || (strip !== null && !isOutside(corners, strip));
  };
}

/** The strip of the reach as planes through the lens, and the level of the lens itself; only level targets have one. */
function stripSides(camera: Camera, footing: Footing): readonly Vec3[] | null {
  const { plane, delta } = footing;
  const found = plane.normal[2] === 1 ? reachStrip(camera, footing) : null;
  if (found === null) return null;
  return [...found.strip, [0, 0, 1] as const].map(([a, b, k]): Vec3 => {
    const along = (axis: 0 | 1 | 2) =>
      a * plane.u[axis] + b * plane.v[axis] + (k / delta) * plane.normal[axis];
    return [along(0), along(1), along(2)];
  });
}

/** The corners of a box from the lens. */
const cornersOf = (box: Box, grown: number, eye: Vec3): readonly Vec3[] =>
  Array.from({ length: 8 }, (_, corner): Vec3 => {
    const at = (axis: 0 | 1 | 2) =>
      corner & (1 << axis) ? box[(axis + 3) as 3 | 4 | 5] + grown - eye[axis] : box[axis] - grown - eye[axis];
    return [at(0), at(1), at(2)];
  });

const isOutside = (corners: readonly Vec3[], sides: readonly Vec3[]): boolean =>
  sides.some((side) => corners.every((corner) => dot(side, corner) < 0));

const isBeyond = (corners: readonly Vec3[], { plane, delta }: Footing): boolean =>
  corners.every((corner) => dot(plane.normal, corner) / delta > 1);
