import { pictureFromWall, type Homography } from '../../base/homography.ts';
import type { Plane } from '../../base/plane.ts';
import { dot, type Vec2 } from '../../base/vector.ts';
import { hostFaces } from '../../model/faces.ts';
import { wallSurfaces } from '../../model/surface.ts';
import type { Plan, WallPicture } from '../../plan/plan.ts';

/** A photo squared onto a wall, as it is shown: over the whole wall, as far as the photo reaches. */
export interface SquaredPicture {
  readonly id: string;
  readonly sha: string;
  /** Of the file, px. */
  readonly size: Vec2;
  /** 0 to 1. */
  readonly strength: number;
  /** Of the wall: u runs right seen from outside, v up, from the foot of its first corner. */
  readonly plane: Plane;
  /** The wall in coordinates of its plane. */
  readonly rings: readonly (readonly Vec2[])[];
  /** From the wall's coordinates to px of the photo. */
  readonly map: Homography;
}

/** The photos on walls of a plan; those left out of the picture, or whose wall cannot be built, are not there. */
export const squaredPictures = ({ pictures, pictureOrder, structures }: Plan): readonly SquaredPicture[] =>
  pictureOrder.flatMap((id): SquaredPicture[] => {
    const picture = pictures[id];
    if (!picture || picture.hidden || picture.use.kind !== 'wall') return [];
    const { file, use } = picture;
    const structure = structures[use.structure];
    if (!structure || structure.hidden) return [];
    const wall = wallSurfaces(structure).find(({ face }) => face === use.face);
    const host = hostFaces(structure).find(({ sort, face }) => sort === 'wall' && face === use.face);
    if (!wall || !host) return [];
    const { plane, rings } = wall;
    const isForward = dot(plane.u, host.along) >= 0;
    const left = isForward ? use.along : 0 - use.along - use.width;
    return [
      {
        id,
        sha: file.sha,
        size: [file.width, file.height],
        strength: use.strength,
        plane,
        rings,
        map: pictureFromFace(use, [left, use.sill]),
      },
    ];
  });

/** The map of a picture's rectangle, from the face's own coordinates; its lower left corner is at `corner`, m. */
function pictureFromFace({ corners, width, height }: WallPicture, [x, y]: Vec2): Homography {
  const [a, b, c, d, e, f, g, h, i] = pictureFromWall(corners, width, height);
  return [a, b, c - a * x - b * y, d, e, f - d * x - e * y, g, h, i - g * x - h * y];
}
