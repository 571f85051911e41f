import type { Scene } from '../assess/scene.ts';
import { add, scale, type Vec3 } from '../base/vector.ts';
import type { Selected } from '../editor/editor.ts';
import type { Solid } from '../model/solid.ts';
import type { LaidPicture } from '../editor/pictures/siteCorners.ts';
import type { Shown } from './ModelScene.ts';
import { BOARD_EDGE } from './ground/board.ts';
import type { Box } from './orbit.ts';
import { boxOf } from './picking.ts';

/** The box of some solids; null where there is none. */
export function solidsBox(solids: readonly Solid[]): Box | null {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const solid of solids) {
    const box = boxOf(solid);
    for (const axis of [0, 1, 2] as const) {
      low[axis] = Math.min(low[axis], box[axis] ?? Infinity);
      high[axis] = Math.max(high[axis], box[axis + 3] ?? -Infinity);
    }
  }
  return low[0] <= high[0] ? { low, high } : null;
}

const kept = new WeakMap<readonly Solid[], Box | null>();

/** The box of baseboard, solids and cameras. */
export function siteBox({ board, solids, ground, cameras }: Scene): Box {
  let box = kept.get(solids);
  if (box === undefined) {
    box = solidsBox(solids);
    kept.set(solids, box);
  }
  const top = cameras.reduce((most, { eye }) => Math.max(most, eye[2]), ground + 1);
  const low: Vec3 = [board.left, board.bottom, Math.min(ground, box?.low[2] ?? ground) - BOARD_EDGE];
  return { low, high: [board.right, board.top, Math.max(top, box?.high[2] ?? top)] };
}

/** How far around what stands on the board the first view reaches, m. */
const AROUND = 3;
/** The least side of the ground that the first view shows, m. */
const LEAST = 12;

/** What a view of the whole site shows: boundary, solids and cameras, with a little ground around. */
export function homeBox(scene: Scene): Box {
  const { low, high } = siteBox(scene);
  // The board is that box grown by 5 m each way; a small site keeps more of it.
  const inset = (from: number, to: number): number =>
    Math.max(0, Math.min(5 - AROUND, (to - from - LEAST) / 2));
  const [across, along] = [inset(low[0], high[0]), inset(low[1], high[1])];
  return {
    low: [low[0] + across, low[1] + along, scene.ground],
    high: [high[0] - across, high[1] - along, high[2]],
  };
}

const boxAround = (points: readonly Vec3[]): Box => {
  const all = (axis: 0 | 1 | 2): number[] => points.map((point) => point[axis]);
  return {
    low: [Math.min(...all(0)), Math.min(...all(1)), Math.min(...all(2))],
    high: [Math.max(...all(0)), Math.max(...all(1)), Math.max(...all(2))],
  };
};

export const middleOf = ({ low, high }: Box): Vec3 => scale(add(low, high), 0.5);

/** A box with the pictures that are laid around it. */
export const withPictures = (box: Box, pictures: readonly LaidPicture[]): Box =>
  pictures.length === 0 ? box : boxAround([box.low, box.high, ...pictures.flatMap(({ corners }) => corners)]);

/** Around a camera or a lamp, m: the sign alone would fill the window. */
const AROUND_SIGN = 4;

/** The box of a thing in the site; null where it has none. */
export function thingBox(
  scene: Scene | null,
  shown: Pick<Shown, 'lamps' | 'pictures'> | null,
  thing: Selected | null,
): Box | null {
  if (!scene || !thing) return null;
  if (thing.kind === 'boundary' || thing.kind === 'ground') {
    const { left, bottom, right, top } = scene.board;
    return { low: [left, bottom, scene.ground], high: [right, top, scene.ground] };
  }
  if (thing.kind === 'picture') {
    const picture = shown?.pictures.find(({ id }) => id === thing.id);
    return picture ? boxAround(picture.corners) : null;
  }
  const eye =
    thing.kind === 'lamp'
      ? shown?.lamps.find(({ id }) => id === thing.id)?.eye
      : scene.cameras.find(({ id }) => id === thing.id)?.eye;
  if (eye)
    return {
      low: [eye[0] - AROUND_SIGN, eye[1] - AROUND_SIGN, Math.max(0, eye[2] - AROUND_SIGN)],
      high: [eye[0] + AROUND_SIGN, eye[1] + AROUND_SIGN, eye[2] + 1],
    };
  const of = thing.kind === 'opening' || thing.kind === 'service' ? thing.on : thing.id;
  return solidsBox(scene.solids.filter(({ structure }) => structure === of));
}
