import { cos, sin } from '../base/angle.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Picture, PicturePoint, SitePicture } from './plan.ts';

/** A picture without a scale is shown this wide, m, until two points give it one. */
const PROVISIONAL_WIDTH = 30;

type Laid = Pick<Picture, 'file'> & { readonly use: SitePicture };

/** Metres that a pixel of a site picture stands for, as it is shown. */
const metresPerPixel = ({ file, use }: Laid): number => use.metresPerPixel ?? PROVISIONAL_WIDTH / file.width;

/** Where a point of a site picture lies on the site, m. Pixels from its top left outer corner, right and down. */
export function siteFromPicture(picture: Laid, [u, v]: PicturePoint): Vec2 {
  const scale = metresPerPixel(picture);
  const [x, y] = [u * scale, -v * scale];
  const { at, turn } = picture.use;
  // Up is the bearing `turn`, so right is a quarter turn clockwise of it.
  return [at[0] + x * cos(turn) + y * sin(turn), at[1] - x * sin(turn) + y * cos(turn)];
}

/** The point of a site picture that lies at a place of the site, pixels. */
export function pictureFromSite(picture: Laid, [x, y]: Vec2): PicturePoint {
  const scale = metresPerPixel(picture);
  const { at, turn } = picture.use;
  const [dx, dy] = [x - at[0], y - at[1]];
  return [(dx * cos(turn) - dy * sin(turn)) / scale, -(dx * sin(turn) + dy * cos(turn)) / scale];
}
