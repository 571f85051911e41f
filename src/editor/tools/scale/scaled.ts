import { bearing } from '../../../base/angle.ts';
import type { Vec2 } from '../../../base/vector.ts';
import type { Picture, PicturePoint, Plan, SitePicture } from '../../../plan/plan.ts';
import { siteFromPicture } from '../../../plan/sitePicture.ts';
import { bearingOf } from '../../settings/compass.ts';

/** A picture that is laid on the ground. */
export type LaidPicture = Picture & { readonly use: SitePicture };

/** Two points of a picture, and what lies between them on the site. */
export interface KnownDistance {
  readonly first: PicturePoint;
  readonly second: PicturePoint;
  readonly metres: number;
  /** The bearing of the line from the first to the second, °; null: the picture's up is north. */
  readonly heading: number | null;
  /** Where the first point lies on the site. */
  readonly firstAt: Vec2;
}

/**
 * A picture's place, scale and turn from a known distance; locked from then on.
 * @throws RangeError where the two points are one
 */
export function scaled(
  picture: LaidPicture,
  { first, second, metres, heading, firstAt }: KnownDistance,
): LaidPicture {
  const [right, down] = [second[0] - first[0], second[1] - first[1]];
  const pixels = Math.hypot(right, down);
  if (!(pixels > 0)) throw new RangeError('a scale needs two points');
  const turn = heading === null ? 0 : bearing(heading - bearingOf(right, -down));
  const use: SitePicture = { ...picture.use, metresPerPixel: metres / pixels, turn, at: [0, 0] };
  const [x, y] = siteFromPicture({ ...picture, use }, first);
  return { ...picture, locked: true, use: { ...use, at: [firstAt[0] - x, firstAt[1] - y] } };
}

/** The site picture that a scale is for: the selected one, else the last without a scale, else the last. */
export function pictureToScale(plan: Plan, selected: string | null): LaidPicture | null {
  const laid = plan.pictureOrder.flatMap((id) => {
    const picture = plan.pictures[id];
    return picture && isLaid(picture) ? [picture] : [];
  });
  return (
    laid.find(({ id }) => id === selected) ??
    laid.findLast(({ use }) => use.metresPerPixel === null) ??
    laid.at(-1) ??
    null
  );
}

const isLaid = (picture: Picture): picture is LaidPicture => picture.use.kind === 'site';

/** Whether nothing is drawn yet, so that the site may begin anywhere. */
export const isEmpty = (plan: Plan): boolean =>
  plan.boundary === null &&
  [plan.structures, plan.cameras, plan.lamps, plan.patches, plan.requirements].every(
    (records) => Object.keys(records).length === 0,
  );
