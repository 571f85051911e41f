import type { Extent } from './camera.ts';

/** A part of the sensor that a picture mode uses, in shares of the active width and height: x, y of its corner, then size. */
interface Crop {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A picture that the camera gives: recorded, small stream, rotated, stabilised. Pixels and crop belong to it. */
interface PictureMode {
  readonly id: string;
  readonly name: string;
  readonly frame: Extent;
  readonly crop: Crop;
}

/**
 * A lens as its data sheet gives it. `shortest` = `longest` for a fixed lens; `focalLength` is the present setting (mm).
 * `statedHfov` are the horizontal angles printed for both ends (°), null where none is printed: then the law is rectilinear.
 */
export interface Lens {
  readonly shortest: number;
  readonly longest: number;
  readonly focalLength: number;
  readonly statedHfov: { readonly atShortest: number; readonly atLongest: number } | null;
  readonly fNumber: number | null;
  /** The law k in [−1, 1] where it is known itself, as from a calibration; then no stated angle is asked. */
  readonly law?: number;
}

/** Sensor, pictures and lens of one camera: what a data sheet tells. */
export interface Device {
  /** Active area, mm. */
  readonly sensor: Extent;
  readonly modes: readonly PictureMode[];
  /** Id of the mode that is recorded; bands are judged in it. */
  readonly recorded: string;
  readonly lens: Lens;
}
