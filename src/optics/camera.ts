import type { Vec3 } from '../base/vector.ts';

/** A width and a height: millimetres of sensor, or pixels of frame. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/**
 * A camera as sight needs it: where the lens is, where it looks, and its law.
 * `eye` is the entrance pupil in the site frame (m); pan is the bearing of the axis, tilt is down,
 * roll is clockwise seen from behind (°). `sensor` is the part that the recorded picture uses (mm),
 * `frame` that picture's pixels, `focalLength` mm, `k` the lens law of DEVELOPERS.md in [−1, 1].
 * `range` (m) bounds what is covered, never what is hidden.
 */
export interface Camera {
  readonly id: string;
  readonly name: string;
  readonly eye: Vec3;
  readonly pan: number;
  readonly tilt: number;
  readonly roll: number;
  readonly focalLength: number;
  readonly k: number;
  readonly sensor: Extent;
  readonly frame: Extent;
  readonly range: number;
}
