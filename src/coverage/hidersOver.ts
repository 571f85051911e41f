import type { Casters, TargetBox } from './casters.ts';

/** Rounding of a half-space, per size of its terms; and of a depth. */
const ROUNDING = 1e-12;
const SAME_DEPTH = 1e-10;
/** How far outside a half-space the middle of a box may lie and count as in it: faces share their edges, m. */
const ON_EDGE = 1e-9;

/** What hides the targets in a box, as far as the whole box lets know. */
export interface HidersOver {
  /** Solids that can be the first to hide a target of it, ascending. */
  readonly solids: readonly number[];
  /** Whether a target of it may be hidden by none. */
  readonly open: boolean;
  /** The casters that must be asked in parts of it. */
  readonly left: readonly number[];
}

/** What is known of one solid over a box. */
interface Over {
  readonly solid: number;
  /** Casters that reach into the box, and of them one that covers it all; −1: none does. */
  readonly casters: number[];
  full: number;
  /** Whether what the solid hides may end in the box, and whether it hides the middle. */
  ends: boolean;
  middle: boolean;
}

/**
 * What can hide targets of a box first, never too little: a solid covers the box for sure where one of its casters does, or
 * where it hides the middle and none of the casters that reach in may end there; it is behind another for sure where all of
 * its casters are, over the whole box.
 * @param asked  casters that can reach into the box
 * @param framed whether the whole box lies in the frame: beyond it casters are left out, so that where none is tells nothing
 */
export function hidersOver(
  casters: Casters,
  asked: readonly number[],
  box: TargetBox,
  framed: boolean,
): HidersOver {
  const found = reaching(casters, asked, box);
  const covering = found.filter(({ full, ends, middle }) => full >= 0 || (framed && !ends && middle));
  const kept = found.filter(
    (one) =>
      (!framed || one.full >= 0 || one.ends || one.middle) &&
      !covering.some((front) => front !== one && isBefore(casters, front, one, box)),
  );
  return {
    solids: kept.map(({ solid }) => solid).sort((one, two) => one - two),
    open: covering.length === 0,
    left: kept.flatMap((one) => one.casters),
  };
}

function reaching(casters: Casters, asked: readonly number[], box: TargetBox): Over[] {
  const { first, sides, ends, solid } = casters;
  const { x, y, z, hx, hy, hz } = box;
  const found: Over[] = [];
  for (const caster of asked) {
    let isFull = true;
    let isMiddle = true;
    let mayEnd = false;
    let isOut = false;
    for (let side = first[caster] ?? 0; side < (first[caster + 1] ?? 0); side += 1) {
      const a = sides[side * 4] ?? 0;
      const b = sides[side * 4 + 1] ?? 0;
      const c = sides[side * 4 + 2] ?? 0;
      const k = sides[side * 4 + 3] ?? 0;
      const value = a * x + b * y + c * z + k;
      const reach =
        Math.abs(a) * hx +
        Math.abs(b) * hy +
        Math.abs(c) * hz +
        ROUNDING * (1 + Math.abs(a * x) + Math.abs(b * y) + Math.abs(c * z) + Math.abs(k));
      if (value + reach < 0) {
        isOut = true;
        break;
      }
      if (value < -ON_EDGE) isMiddle = false;
      if (value - reach >= 0) continue;
      isFull = false;
      if (ends[side] === 1) mayEnd = true;
    }
    if (isOut) continue;
    const own = solid[caster] ?? -1;
    let over = found.find((one) => one.solid === own);
    if (over === undefined) {
      over = { solid: own, casters: [], full: -1, ends: false, middle: false };
      found.push(over);
    }
    over.casters.push(caster);
    if (isFull) over.full = caster;
    if (mayEnd) over.ends = true;
    if (isMiddle) over.middle = true;
  }
  return found;
}

/** Whether a solid that covers the box is nearer than another all over it; on equal depth the lower index is. */
function isBefore(casters: Casters, front: Over, behind: Over, box: TargetBox): boolean {
  const fronts = front.full >= 0 ? [front.full] : front.casters;
  return fronts.every((one) => behind.casters.every((two) => isNearer(casters, one, two, box)));
}

function isNearer({ depths, solid }: Casters, one: number, two: number, box: TargetBox): boolean {
  const { x, y, z, hx, hy, hz } = box;
  const n = (caster: number, at: number): number => depths[caster * 4 + at] ?? 0;
  const [a, b, c] = [n(one, 0) - n(two, 0), n(one, 1) - n(two, 1), n(one, 2) - n(two, 2)];
  const value = a * x + b * y + c * z + n(one, 3) - n(two, 3);
  const reach = Math.abs(a) * hx + Math.abs(b) * hy + Math.abs(c) * hz;
  const size = (caster: number): number =>
    Math.abs(n(caster, 0) * x) +
    Math.abs(n(caster, 1) * y) +
    Math.abs(n(caster, 2) * z) +
    Math.abs(n(caster, 3));
  const same = SAME_DEPTH * (1 + size(one) + size(two));
  if (value - reach > same) return true;
  return Math.abs(value) + reach <= same && (solid[one] ?? 0) < (solid[two] ?? 0);
}
