import type { Vec3 } from './vector.ts';

/**
 * A flat surface: the points origin + a·u + b·v, with u and v unit and square to one another, normal = u × v.
 * For ground offset by a target height a = x and b = y. Site frame, metres.
 */
export interface Plane {
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly normal: Vec3;
}

/** The horizontal plane at height z, with plane coordinates x and y. */
export const horizontalPlane = (z: number): Plane => ({
  origin: [0, 0, z],
  u: [1, 0, 0],
  v: [0, 1, 0],
  normal: [0, 0, 1],
});

/** The site point at plane coordinates a, b. */
export const pointOn = ({ origin, u, v }: Plane, a: number, b: number): Vec3 => [
  origin[0] + a * u[0] + b * v[0],
  origin[1] + a * u[1] + b * v[1],
  origin[2] + a * u[2] + b * v[2],
];
