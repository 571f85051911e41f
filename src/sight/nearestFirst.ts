import { BoxAround } from './boxAround.ts';
import type { Faces } from './faces.ts';
import type { Footing } from './footing.ts';
import { Sectors } from './sectors.ts';
import { STRIDE, type Shadows } from './shadowLayout.ts';
import type { ShadowMaker } from './shadowMaker.ts';

/** Clumps of more faces are too finely cut to hide much face by face. */
const MOST = 64;

/** A clump whose shadows wait until all that is asked for lies beyond it. */
interface Waiting {
  readonly farthest: number;
  readonly first: number;
  readonly count: number;
  readonly start: number;
  readonly end: number;
  readonly whole: boolean;
}

/**
 * The shadows of clumps, from the nearest to the lens on, without those of clumps and faces that lie wholly in the shadow of
 * others that are nearer: neither cells nor outlines nor what hides first need them. In the order of their faces.
 */
export function nearestFirst(
  { clumps, convex }: Faces,
  footing: Footing,
  reach: number,
  within: Int32Array,
  made: ShadowMaker,
  add: (clump: number) => void,
): Shadows {
  const around = new BoxAround(footing, reach);
  // The distance in whole millimetres and the place in `within` in one number, which sort without a comparison of our own.
  const order = new Float64Array(within.length);
  const found = new Float64Array(within.length * FOUND);
  for (let place = 0; place < within.length; place += 1) {
    around.take(clumps.boxes, (within[place] ?? 0) * 6);
    order[place] = Math.floor(around.nearest * 1000) * CLUMPS + place;
    found[place * FOUND] = around.start;
    found[place * FOUND + 1] = around.end;
    found[place * FOUND + 2] = around.farthest;
    found[place * FOUND + 3] = around.shadowNear;
    found[place * FOUND + 4] = around.shadowFar;
  }
  order.sort();
  const sectors = new Sectors();
  made.dark = sectors;
  const waiting: Waiting[] = [];
  const runs: Run[] = [];
  for (const key of order) {
    const place = key % CLUMPS;
    const clump = within[place] ?? 0;
    const at = place * FOUND;
    const [start, end, farthest] = [found[at] ?? 0, found[at + 1] ?? 0, found[at + 2] ?? 0];
    const nearest = Math.floor(key / CLUMPS) / 1000;
    // Those who wait stand in the order of their distance, the nearest last.
    for (let next = waiting.at(-1); next !== undefined && next.farthest < nearest; next = waiting.at(-1)) {
      waiting.pop();
      cast(sectors, made, next);
    }
    if (sectors.holds(start, end, found[at + 3] ?? 0, found[at + 4] ?? 0)) continue;
    const first = made.made;
    made.limited = false;
    add(clump);
    const count = made.made - first;
    if (count === 0) continue;
    runs.push({ clump, first, count });
    if (count > MOST) continue;
    const whole = convex[clumps.group[clump] ?? 0] === 1 && !made.limited;
    const one = { farthest, first, count, start, end, whole };
    let turn = waiting.length;
    while (turn > 0 && (waiting[turn - 1]?.farthest ?? 0) < farthest) turn -= 1;
    waiting.splice(turn, 0, one);
  }
  runs.sort((one, two) => one.clump - two.clump);
  return ordered(made.shadows(), runs);
}

/** Shadows of a clump, as they were made. */
interface Run {
  readonly clump: number;
  readonly first: number;
  readonly count: number;
}

/** The shadows that were made, run by run in the order given. */
function ordered(
  { count, numbers, sides, outline, solid, facet, dark }: Shadows,
  runs: readonly Run[],
): Shadows {
  const sorted = {
    count,
    numbers: new Float64Array(count * STRIDE),
    sides: new Uint8Array(count),
    outline: new Uint8Array(count),
    solid: new Int32Array(count),
    facet: new Int32Array(count),
    dark,
  };
  let to = 0;
  for (const { first, count: many } of runs) {
    sorted.numbers.set(numbers.subarray(first * STRIDE, (first + many) * STRIDE), to * STRIDE);
    sorted.sides.set(sides.subarray(first, first + many), to);
    sorted.outline.set(outline.subarray(first, first + many), to);
    sorted.solid.set(solid.subarray(first, first + many), to);
    sorted.facet.set(facet.subarray(first, first + many), to);
    to += many;
  }
  return sorted;
}

function cast(sectors: Sectors, made: ShadowMaker, { first, count, start, end, whole }: Waiting): void {
  const { numbers, sides } = made.shadows();
  if (whole) sectors.add(numbers, sides, first, count, start, end);
  else for (let shadow = first; shadow < first + count; shadow += 1) sectors.addOne(numbers, sides, shadow);
}

/** More clumps than any scene has. */
const CLUMPS = 2 ** 24;

/** Numbers that are kept of each clump: its rays, its greatest distance, and the least and greatest of its shadow. */
const FOUND = 5;
