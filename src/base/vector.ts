/** A point or direction over ground: x east, y north, metres. */
export type Vec2 = readonly [x: number, y: number];

/** A point or direction in the site frame: x east, y north, z up, metres. */
export type Vec3 = readonly [x: number, y: number, z: number];

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const scale = (a: Vec3, factor: number): Vec3 => [a[0] * factor, a[1] * factor, a[2] * factor];

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);

/**
 * The direction of a vector.
 * @throws RangeError for the zero vector, which has none
 */
export function unit(a: Vec3): Vec3 {
  const size = length(a);
  if (!(size > 0)) throw new RangeError(`a direction needs a length above 0, got ${a.join(', ')}`);
  return scale(a, 1 / size);
}

export const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
