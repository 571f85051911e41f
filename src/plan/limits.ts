import { GREATEST_COORDINATE, GREATEST_HEIGHT, GREATEST_SPAN, LEAST_SIZE } from '../base/tolerance.ts';

/** The least and the greatest that a value may be, both included. */
export interface Limit {
  readonly least: number;
  readonly most: number;
}

const between = (least: number, most: number): Limit => ({ least, most });

/** What the plan file, the setting sheet and the command line accept: metres, degrees, pixels; lens and sensor mm. */
export const LIMITS = {
  coordinate: between(-GREATEST_COORDINATE, GREATEST_COORDINATE),
  /** Heights above z = 0 or above a base. */
  height: between(LEAST_SIZE, GREATEST_HEIGHT),
  level: between(-GREATEST_HEIGHT, GREATEST_HEIGHT),
  pitch: between(0, 80),
  /** A side of a cell of ground. */
  cell: between(0.01, 1_000),
  overhang: between(0, 20),
  parapet: between(0, 20),
  thickness: between(LEAST_SIZE, 20),
  size: between(LEAST_SIZE, 5_000),
  setBack: between(0, 20),
  posts: between(0, 100),
  bearing: between(-360, 360),
  tilt: between(-90, 90),
  roll: between(-180, 180),
  range: between(0.1, 5_000),
  beam: between(1, 360),
  exposure: between(0.001, 10_000),
  lux: between(0.001, 100_000),
  candela: between(0, 1e9),
  vertical: between(0, 180),
  horizontal: between(0, 360),
  standOff: between(0, 2),
  reach: between(0, 20),
  plate: between(0.01, 1),
  /** From the hole to the middle of the plate. */
  plateOffset: between(-1, 1),
  /** How far a mount lets pan and roll go each way, and tilt up or down. */
  turn: between(0, 180),
  sensor: between(0.1, 100),
  pixels: between(16, 100_000),
  picturePixels: between(1, 100_000),
  /** A point of a picture, or one that its frame leaves out, px. */
  picturePoint: between(-100_000, 200_000),
  metresPerPixel: between(1e-6, 1_000),
  /** A place along a wall that may lie beside it, m. */
  across: between(-GREATEST_SPAN, GREATEST_SPAN),
  focalLength: between(0.1, 5_000),
  angleOfView: between(0.1, 360),
  fNumber: between(0.3, 64),
  law: between(-1, 1),
  imagesPerSecond: between(0.1, 1_000),
  bitRate: between(0.001, 10_000),
  powerClass: between(0, 8),
  focusDistance: between(0.01, 5_000),
  /** Least light of a sensor, finer than that of a place. */
  sensitivity: between(0, 1_000),
  /** A threshold of a caution, in its own unit. */
  threshold: between(-1e6, 1e6),
  year: between(1, 9999),
  latitude: between(-90, 90),
  longitude: between(-180, 180),
  stature: between(0.3, 3),
  walkingSpeed: between(0.1, 15),
  angle: between(0, 180),
  steep: between(0, 90),
  place: between(0, 10),
  percent: between(0, 100),
} as const satisfies Readonly<Record<string, Limit>>;

/** The most characters of a name, and of an id. */
export const NAME_LENGTH = 120;
export const ID_LENGTH = 64;
/** The most characters of a field of a drill card. */
export const NOTE_LENGTH = 500;
/** The most cells of a ground given by its grid. */
export const GROUND_CELLS = 1_000_000;
/** The most characters of a credit line. */
export const CREDIT_LENGTH = 500;
