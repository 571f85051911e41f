import type { Camera, Extent } from './camera.ts';
import type { ImagePoint } from './projection.ts';

/** How far a recorded picture is turned clockwise so that the site stands upright in it, °. */
export type Quarter = 0 | 90 | 180 | 270;

/** The quarter turn that is nearest to a camera's roll: a corridor picture is stood on its short side. */
export function quarterOf({ roll }: Pick<Camera, 'roll'>): Quarter {
  const turned = ((Math.round(roll / 90) % 4) + 4) % 4;
  return turned === 0 ? 0 : turned === 1 ? 90 : turned === 2 ? 180 : 270;
}

/** Pixels across and down of the picture as it stands upright. */
export const uprightFrame = ({ width, height }: Extent, quarter: Quarter): Extent =>
  quarter === 0 || quarter === 180 ? { width, height } : { width: height, height: width };

/** A place of the recorded picture in the upright one. */
export function uprightFromImage({ u, v }: ImagePoint, frame: Extent, quarter: Quarter): ImagePoint {
  switch (quarter) {
    case 0:
      return { u, v };
    case 90:
      return { u: frame.height - v, v: u };
    case 180:
      return { u: frame.width - u, v: frame.height - v };
    case 270:
      return { u: v, v: frame.width - u };
  }
}

/** A place of the upright picture in the recorded one, whose frame is given. */
export function imageFromUpright({ u, v }: ImagePoint, frame: Extent, quarter: Quarter): ImagePoint {
  switch (quarter) {
    case 0:
      return { u, v };
    case 90:
      return { u: v, v: frame.height - u };
    case 180:
      return { u: frame.width - u, v: frame.height - v };
    case 270:
      return { u: frame.width - v, v: u };
  }
}

/** The camera that gives the upright picture as it is: the same lens and axis, stood up. */
export function uprightCamera(camera: Camera): Camera {
  const quarter = quarterOf(camera);
  return {
    ...camera,
    roll: camera.roll - quarter,
    sensor: uprightFrame(camera.sensor, quarter),
    frame: uprightFrame(camera.frame, quarter),
  };
}
