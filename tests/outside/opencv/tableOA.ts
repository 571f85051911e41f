/*
 * Source: projections computed with OpenCV 4.6.0 (projectPoints and fisheye::projectPoints), another build than the one
 * the tests run; densities by central difference of 0.1 mm of the same. Status: computed, for f = 4 mm on 4.8 × 2.7 mm,
 * 2560 × 1440 px, lens at (2, −1, 3.2). No licence: numbers.
 */
import { cameraWith } from '../../optics/sampleCamera.ts';

export const CAMERA_OA = cameraWith({
  eye: [2, -1, 3.2],
  focalLength: 4,
  sensor: { width: 4.8, height: 2.7 },
  frame: { width: 2560, height: 1440 },
});

interface Row {
  readonly pose: readonly [pan: number, tilt: number, roll: number];
  readonly point: readonly [number, number, number];
  readonly depth: number;
  readonly rectilinear: readonly [u: number, v: number];
  /** px/m horizontally square to the bearing, and along the vertical. */
  readonly density: readonly [horizontal: number, vertical: number];
  readonly equidistant: readonly [u: number, v: number];
  readonly bentDensity: number;
}

const row = (
  pose: Row['pose'],
  point: Row['point'],
  depth: number,
  rectilinear: Row['rectilinear'],
  density: Row['density'],
  equidistant: Row['equidistant'],
  bentDensity: number,
): Row => ({ pose, point, depth, rectilinear, density, equidistant, bentDensity });

/** A place outside the picture is listed on purpose: its numbers hold, the frame must refuse it. */
export const TABLE_OA: readonly Row[] = [
  row([0, 0, 0], [2, 9, 1.6], 10, [1280, 1061.333], [213.333, 213.333], [1280, 1058.465], 211.54),
  row([0, 0, 0], [6, 9, 0], 10, [2133.333, 1402.667], [231.162, 213.333], [2068.614, 1350.891], 192.352),
  row([0, 0, 0], [-3, 14, 1.6], 15, [568.889, 947.556], [149.992, 142.222], [595.96, 938.893], 134.455),
  row([0, 0, 0], [5, 7, 0.5], 8, [2080, 1440], [286.548, 266.667], [2020.915, 1386.824], 241.609),
  row([30, 25, 0], [2, 9, 1.6], 8.525, [28.785, 166.991], [284.198, 261.67], [167.416, 228.262], 214.225),
  row([30, 25, 0], [6, 9, 0], 11.0138, [982.503, 409.112], [195.372, 187.824], [986.442, 413.228], 190.594),
  row([30, 25, 0], [5, 7, 0.5], 8.7796, [939.351, 449.098], [245.77, 233.837], [943.962, 452.766], 238.805),
  row(
    [-40, 12, 5],
    [2, 9, 1.6],
    7.8257,
    [3024.952, 559.767],
    [351.442, 270.88],
    [2740.834, 585.857],
    210.997,
  ),
  row(
    [-40, 12, 5],
    [-3, 14, 1.6],
    14.7159,
    [2100.433, 431.071],
    [155.511, 145.344],
    [2059.027, 445.653],
    134.56,
  ),
];
