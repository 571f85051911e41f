import { bearing, degreesFromRad } from '../../base/angle.ts';

/** The bearing of a direction over ground, °. */
export const bearingOf = (x: number, y: number): number => bearing(degreesFromRad(Math.atan2(x, y)));
