import type { Extent } from './camera.ts';

/** A part of the sensor that a picture mode uses, in shares of the active width and height: x, y of its corner, then size. */
interface Crop {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What a picture is for. The one that is recorded is named by `Device.recorded`, whatever its use. */
export type PictureUse = 'recorded' | 'live' | 'rotated' | 'stabilised' | 'other';

/** A picture that the camera gives. Pixels and crop belong to it, and so does the angle that follows from the crop. */
export interface PictureMode {
  readonly id: string;
  readonly name: string;
  readonly use: PictureUse;
  readonly frame: Extent;
  readonly crop: Crop;
  /** Whether the crop is known, as from the sheet or a test; else it is taken to be what it says, and may differ. */
  readonly cropKnown: boolean;
}

/** Angles that a sheet prints for both ends of a lens, °; equal for a fixed one. */
export interface StatedAngles {
  readonly atShortest: number;
  readonly atLongest: number;
}

/**
 * A lens as its data sheet gives it. `shortest` = `longest` for a fixed lens; `focalLength` is the present setting (mm).
 * `statedHfov` are the horizontal angles printed for both ends (°), null where none is printed: then the law is rectilinear.
 * `statedVfov` are held against what follows from them. `statedIn` is the picture mode for which both are printed; null:
 * the whole sensor.
 */
export interface Lens {
  readonly shortest: number;
  readonly longest: number;
  readonly focalLength: number;
  readonly statedHfov: StatedAngles | null;
  readonly statedVfov: StatedAngles | null;
  readonly statedIn: string | null;
  readonly fNumber: number | null;
  /** The law k in [−1, 1] where it is known itself, as from a calibration; then no stated angle is asked. */
  readonly law?: number;
}

/** The trade's words for the shape of a camera. */
export type Housing = 'turret' | 'dome' | 'bullet' | 'box' | 'tube' | 'panTiltZoom';

/** What else a data sheet tells; null: not known. */
export interface DataSheet {
  /** What the device is called, as in the library that it was taken from. */
  readonly name: string | null;
  /** lx */
  readonly minimumIllumination: number | null;
  readonly imagesPerSecond: number | null;
  /** Mbit/s */
  readonly bitRate: number | null;
  /** Class of power over the data cable, 0 to 8. */
  readonly powerClass: number | null;
  /** What the lens is focused on, m. */
  readonly focusDistance: number | null;
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
