/*
 * Source: active areas by format. 1/4, 1/3, 1/2, 2/3 and 1 inch: a machine-vision lens page (excerpt read). 1/2.5: a
 * general sensor-size table in a public repository (read). 1/2.7 and 1/1.8: an encyclopaedia's table of sensor formats,
 * from memory; it also gives 5.30 × 4.00 and 7.20 × 5.40. 1/2.8: 1920 × 1080 pixels of 2.9 µm, from memory of image-sensor
 * data sheets. Fields of view: 2 atan(w / 2f), computed for this table to two digits. Numbers only, no licence.
 */
interface Format {
  readonly name: string;
  /** Key in shared/tables/sensors.json. */
  readonly key: string;
  readonly size: readonly [width: number, height: number];
  /** Horizontal and vertical field of view, °, at each of FOCAL_LENGTHS. */
  readonly views: readonly (readonly [hfov: number, vfov: number])[];
}

export const FOCAL_LENGTHS = [2.8, 4, 6, 8, 12] as const;

const format = (name: string, key: string, size: Format['size'], views: Format['views']): Format => ({
  name,
  key,
  size,
  views,
});

export const FORMATS: readonly Format[] = [
  format(
    '1/4',
    '1/4',
    [3.2, 2.4],
    [
      [59.49, 46.4],
      [43.6, 33.4],
      [29.86, 22.62],
      [22.62, 17.06],
      [15.19, 11.42],
    ],
  ),
  format(
    '1/3',
    '1/3',
    [4.8, 3.6],
    [
      [81.2, 65.47],
      [61.93, 48.46],
      [43.6, 33.4],
      [33.4, 25.36],
      [22.62, 17.06],
    ],
  ),
  format(
    '1/2.8',
    '1/2.8-16x9',
    [5.57, 3.13],
    [
      [89.69, 58.4],
      [69.7, 42.74],
      [49.8, 29.24],
      [38.39, 22.14],
      [26.13, 14.86],
    ],
  ),
  format(
    '1/2.7',
    '1/2.7',
    [5.37, 4.04],
    [
      [87.6, 71.62],
      [67.74, 53.59],
      [48.22, 37.21],
      [37.11, 28.34],
      [25.22, 19.11],
    ],
  ),
  format(
    '1/2.5',
    '1/2.5',
    [5.76, 4.29],
    [
      [91.61, 74.91],
      [71.51, 56.4],
      [51.28, 39.34],
      [39.6, 30.02],
      [26.99, 20.27],
    ],
  ),
  format(
    '1/1.8',
    '1/1.8',
    [7.18, 5.32],
    [
      [104.1, 87.06],
      [83.82, 67.25],
      [61.79, 47.82],
      [48.34, 36.78],
      [33.31, 25],
    ],
  ),
  format(
    '2/3',
    '2/3',
    [8.8, 6.6],
    [
      [115.06, 99.37],
      [95.45, 79.05],
      [72.51, 57.62],
      [57.62, 44.83],
      [40.27, 30.75],
    ],
  ),
  format(
    '1',
    '1',
    [12.8, 9.6],
    [
      [132.74, 119.49],
      [115.99, 100.39],
      [93.7, 77.32],
      [77.32, 61.93],
      [56.14, 43.6],
    ],
  ),
];
