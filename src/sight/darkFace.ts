import { turnFrom, turnOf, type Sectors } from './sectors.ts';

/**
 * Whether all that a face can hide of a plane is sure to lie in the shadow of nearer solids.
 * @param local four numbers a corner: p along u, q along v, height, and w, the share of the way to the plane
 * @param reach greatest distance from the foot to a target that is asked for, m
 */
export function isFaceDark(dark: Sectors, local: Float64Array, count: number, reach: number): boolean {
  let middleP = 0;
  let middleQ = 0;
  for (let at = 0; at < count * 4; at += 4) {
    middleP += local[at] ?? 0;
    middleQ += local[at + 1] ?? 0;
  }
  const middle = turnOf(middleP, middleQ);
  let [least, most, along, high, far2] = [0, 0, Infinity, 0, 0];
  for (let at = 0; at < count * 4; at += 4) {
    const p = local[at] ?? 0;
    const q = local[at + 1] ?? 0;
    const w = local[at + 3] ?? 0;
    if (w <= 0) return false;
    const off = turnFrom(middle, p, q);
    if (off < least) least = off;
    if (off > most) most = off;
    const here = p * middleP + q * middleQ;
    if (here < along) along = here;
    if (w > high) high = w;
    // Beyond the plane a corner hides nothing; before it, what lies 1/w times as far.
    const size2 = (p * p + q * q) / (w < 1 ? w * w : 1);
    if (size2 > far2) far2 = size2;
  }
  // A face around the axis has no direction.
  if (!(along > 0)) return false;
  const near = along / Math.sqrt(middleP * middleP + middleQ * middleQ) / (high < 1 ? high : 1);
  return dark.holds(middle + least, middle + most, near, Math.min(reach, Math.sqrt(far2)));
}
