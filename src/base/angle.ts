/** Radians of an angle in degrees; stays inside function bodies. */
export const radFromDegrees = (degrees: number): number => (degrees * Math.PI) / 180;

/** Degrees of an angle in radians. */
export const degreesFromRad = (rad: number): number => (rad * 180) / Math.PI;

/** Sine of an angle in degrees, exact at multiples of 90. */
export function sin(degrees: number): number {
  const turn = ((degrees % 360) + 360) % 360;
  if (turn === 0 || turn === 180) return 0;
  if (turn === 90) return 1;
  if (turn === 270) return -1;
  return Math.sin(radFromDegrees(degrees));
}

/** Cosine of an angle in degrees, exact at multiples of 90. */
export const cos = (degrees: number): number => sin(degrees + 90);

/** Tangent of an angle in degrees. */
export const tan = (degrees: number): number => sin(degrees) / cos(degrees);

/** The bearing in [0, 360) that points the same way; one that lies there already is kept to the last digit. */
export const bearing = (degrees: number): number =>
  degrees >= 0 && degrees < 360 ? degrees : ((degrees % 360) + 360) % 360;

/** The smallest turn from one bearing to another, in (−180, 180]. */
export function turn(from: number, to: number): number {
  const d = bearing(to - from);
  return d > 180 ? d - 360 : d;
}
