import type { Vec3 } from '../../base/vector.ts';
import type { Rect } from '../parts/clearPlace.ts';
import type { Sheet, Spot } from '../sheet.ts';

/** What is measured, and how large its plate is. */
export interface Measured {
  readonly between: readonly [Vec3, Vec3];
  readonly width: number;
  readonly height: number;
}

export interface DimensionPlace {
  /** The plate's middle, px. */
  readonly at: Spot;
  /** Both ends of its line, off what it measures. */
  readonly ends: readonly [Spot, Spot];
  /** The points measured, as they appear. */
  readonly from: readonly [Spot, Spot];
}

/** How far from what it measures a dimension may stand, px: nearest first, outside before inside. */
const OFFSETS = [22, 40, -22, -40] as const;
/** What is shorter on the window has no dimension, px. */
const SHORT = 26;
const GAP = 3;

/**
 * Where the dimensions of a thing stand on the window, in their order: beside what they measure, clear of one another, of
 * what lies over the Model, and within it. One that has no room is left out.
 * @param middle of the thing, from which they keep away
 * @param taken boxes that none may cover
 * @param seen whether nothing stands before each
 */
export function dimensionPlaces(
  sheet: Sheet,
  wanted: readonly Measured[],
  middle: Vec3,
  taken: readonly Rect[],
  seen: readonly boolean[],
): (DimensionPlace | null)[] {
  const full: Rect[] = [...taken];
  const about = sheet.spotFromSite(middle);
  return wanted.map(({ between, width, height }, i) => {
    if (seen[i] === false) return null;
    const [a, b] = [sheet.spotFromSite(between[0]), sheet.spotFromSite(between[1])];
    if (!a || !b || !about) return null;
    const run = Math.hypot(b.x - a.x, b.y - a.y);
    if (run < SHORT) return null;
    const half = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    const side = { x: -(b.y - a.y) / run, y: (b.x - a.x) / run };
    const outward = (half.x - about.x) * side.x + (half.y - about.y) * side.y < 0 ? -1 : 1;
    for (const offset of OFFSETS) {
      const off = { x: side.x * offset * outward, y: side.y * offset * outward };
      // On its line, else beyond it.
      const past = (Math.abs(side.x) * width + Math.abs(side.y) * height) / 2 + GAP;
      const found = [0, past].flatMap((more) => {
        const share = 1 + more / Math.abs(offset);
        const at = { x: half.x + off.x * share, y: half.y + off.y * share };
        const rect = { left: at.x - width / 2, top: at.y - height / 2, width, height };
        return isWithin(rect, sheet) && !full.some((other) => meets(rect, other)) ? [{ at, rect }] : [];
      })[0];
      if (!found) continue;
      full.push(found.rect);
      const { at } = found;
      return {
        at,
        ends: [
          { x: a.x + off.x, y: a.y + off.y },
          { x: b.x + off.x, y: b.y + off.y },
        ],
        from: [a, b],
      };
    }
    return null;
  });
}

const isWithin = ({ left, top, width, height }: Rect, sheet: Sheet): boolean =>
  left >= 0 && top >= 0 && left + width <= sheet.width && top + height <= sheet.height;

const meets = (a: Rect, b: Rect): boolean =>
  a.left < b.left + b.width + GAP &&
  b.left < a.left + a.width + GAP &&
  a.top < b.top + b.height + GAP &&
  b.top < a.top + a.height + GAP;
