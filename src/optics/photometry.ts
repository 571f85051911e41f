import { bearing, cos } from '../base/angle.ts';
import type { Photometry } from './light.ts';

/**
 * How brightly a lamp shines into a direction, cd: between the four nearest angles given, linear in both.
 * @param vertical   ° from straight down, in [0, 180]; outside the angles given it does not shine
 * @param horizontal ° about the vertical from the C0 plane, any number of turns; symmetry is that of `Photometry`
 */
export function candelaAt(
  { verticals, horizontals, candela }: Photometry,
  vertical: number,
  horizontal: number,
): number {
  const last = verticals.length - 1;
  if (!(vertical >= (verticals[0] ?? 0) && vertical <= (verticals[last] ?? 0))) return 0;
  const row = placeIn(verticals, vertical);
  const share = shareOf(verticals, row, vertical);
  const along = (column: number): number => {
    const values = candela[column];
    const low = values?.[row] ?? 0;
    return low + share * ((values?.[row + 1] ?? 0) - low);
  };
  const turned = folded(horizontals, horizontal);
  const end = horizontals.length - 1;
  const [first, most] = [horizontals[0] ?? 0, horizontals[end] ?? 0];
  if (turned >= first && turned <= most) {
    const column = placeIn(horizontals, turned);
    const across = shareOf(horizontals, column, turned);
    const low = along(column);
    return low + across * (along(column + 1) - low);
  }
  // Between the last angle and the first, once round; a single angle is both.
  const past = turned > most ? turned - most : turned + 360 - most;
  const low = along(end);
  return low + (past / (first + 360 - most)) * (along(0) - low);
}

/**
 * Illuminance by a lamp, lx: I cos ε / d². Source: the inverse square and cosine laws of any lighting text, from memory.
 * @param distance  m, above 0
 * @param incidence ε, ° between the light and the surface's normal: 0 for a surface that faces the lamp, `vertical` for
 *                  level ground below it; past 90° the light falls on its back and counts as 0
 */
export const luxAt = (
  photometry: Photometry,
  vertical: number,
  horizontal: number,
  distance: number,
  incidence = 0,
): number =>
  (candelaAt(photometry, vertical, horizontal) * Math.max(0, cos(incidence))) / (distance * distance);

/** A horizontal angle brought to where angles are given, by the symmetry that their ends stand for. */
function folded(horizontals: readonly number[], horizontal: number): number {
  const round = bearing(horizontal);
  const [first, last] = [horizontals[0] ?? 0, horizontals.at(-1) ?? 0];
  if (first === 90 && last === 270) return round < 90 ? 180 - round : round > 270 ? 540 - round : round;
  const half = last <= 180 && round > 180 ? 360 - round : round;
  return last <= 90 && half > 90 ? 180 - half : half;
}

/** The index of the greatest angle that is not above the one asked for; one before the last at the end. */
function placeIn(angles: readonly number[], angle: number): number {
  let [low, high] = [0, Math.max(0, angles.length - 2)];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((angles[middle] ?? 0) <= angle) low = middle;
    else high = middle - 1;
  }
  return low;
}

function shareOf(angles: readonly number[], at: number, angle: number): number {
  const [from, to] = [angles[at] ?? 0, angles[at + 1] ?? 0];
  return to > from ? (angle - from) / (to - from) : 0;
}
