import type { Vec3 } from '../../base/vector.ts';
import { hostFaces } from '../../model/faces.ts';
import type { PictureFile, PinnedPicture, Plan, SitePicture, WallPicture } from '../../plan/plan.ts';
import { LIMITS } from '../../plan/limits.ts';

/** A photo is taken from about so high above the ground, m: common practice, no source. */
const EYE_HEIGHT = 1.6;
/** Above this a point was of something other than the ground, m. */
const ON_GROUND = 0.05;
/** Before its corners are set, the rectangle leaves this share of the photo free at each side. */
const FREE = 0.2;

/** The use of a photo pinned at a point of the site; on the ground it is raised to the eye of who took it. */
export function pinnedAt({ ground }: Pick<Plan, 'ground'>, [x, y, z]: Vec3): PinnedPicture {
  const level = ground.kind === 'flat' ? ground.height : z;
  return { kind: 'photo', at: [x, y, z - level > ON_GROUND ? z : z + EYE_HEIGHT], heading: null };
}

/** The use of a photo on a wall, its rectangle the whole wall up to the eaves; null where there is no such wall. */
export function squaredOnto(
  { structures }: Pick<Plan, 'structures'>,
  structure: string,
  face: number,
  { width, height }: Pick<PictureFile, 'width' | 'height'>,
): WallPicture | null {
  const owner = Object.hasOwn(structures, structure) ? structures[structure] : undefined;
  const wall = owner && hostFaces(owner).find((one) => one.sort === 'wall' && one.face === face);
  if (!wall) return null;
  const { least, most } = LIMITS.size;
  const eaves = Math.min(...wall.topLine.map(([, z]) => z)) - wall.foot;
  const [left, right] = [FREE * width, (1 - FREE) * width];
  const [top, bottom] = [FREE * height, (1 - FREE) * height];
  return {
    kind: 'wall',
    structure,
    face,
    corners: [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ],
    along: 0,
    sill: 0,
    width: Math.min(most, Math.max(least, wall.width)),
    height: Math.max(LIMITS.height.least, eaves),
    strength: 0.8,
  };
}

/** The use of a pinned photo as something to be traced instead: laid with its top left corner at its place, without scale. */
export const tracedInstead = ({ at }: PinnedPicture): SitePicture => ({
  kind: 'site',
  at: [at[0], at[1]],
  metresPerPixel: null,
  turn: 0,
  strength: 0.35,
});
