import { cos, sin } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Picture, SitePicture } from '../plan.ts';
import type { Motion } from './motion.ts';

/**
 * A picture somewhere else. One of a wall goes with its wall. One that is mirrored is not turned over, since it could not
 * be read: its middle goes where the mirror has it.
 */
export function movedPicture(picture: Picture, motion: Motion): Picture {
  const { use, file } = picture;
  switch (use.kind) {
    case 'wall':
      return picture;
    case 'photo': {
      const [x, y] = motion.point([use.at[0], use.at[1]]);
      const heading = use.heading === null ? null : motion.bearing(use.heading);
      return { ...picture, use: { ...use, at: [x, y, use.at[2]], heading } };
    }
    case 'site': {
      const turned = motion.bearing(use.turn);
      if (!motion.mirrors) return { ...picture, use: { ...use, at: motion.point(use.at), turn: turned } };
      const middle = motion.point(add(use.at, toMiddle(use, file, use.turn)));
      const back = toMiddle(use, file, turned);
      return { ...picture, use: { ...use, at: [middle[0] - back[0], middle[1] - back[1]], turn: turned } };
    }
  }
}

const add = (a: Vec2, b: Vec2): Vec2 => [a[0] + b[0], a[1] + b[1]];

/** From the top left corner of a picture to its middle, m; nothing while it has no scale. */
function toMiddle({ metresPerPixel }: SitePicture, file: Picture['file'], up: number): Vec2 {
  const scale = (metresPerPixel ?? 0) / 2;
  return alongPicture(up, file.width * scale, file.height * scale);
}

/** So far right and down in a picture whose up has a bearing (°), m east and north. */
const alongPicture = (up: number, right: number, down: number): Vec2 => [
  right * cos(up) - down * sin(up),
  0 - right * sin(up) - down * cos(up),
];

/** The corners of a picture on the ground from its top left, clockwise; only that one while it has no scale. */
export function pictureCorners(use: SitePicture, file: Picture['file']): readonly Vec2[] {
  const { metresPerPixel: scale, turn: up, at } = use;
  if (scale === null) return [at];
  const [width, height] = [file.width * scale, file.height * scale];
  return [
    at,
    add(at, alongPicture(up, width, 0)),
    add(at, alongPicture(up, width, height)),
    add(at, alongPicture(up, 0, height)),
  ];
}
