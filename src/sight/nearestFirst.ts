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
 * The shadows of clumps, from the nearest to the lens on, without those of clumps that lie wholly in the shadow of others that
 * are nearer: neither cells nor outlines nor what hides first need them. In the order of their faces.
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
  // The distance in whole millimetres and the clump in one number, which sort without a comparison of our own.
  const order = Float64Array.from(within, (clump) => {
    around.take(clumps.boxes, clump * 6);
    return Math.floor(around.nearest * 1000) * CLUMPS + clump;
  }).sort();
  const sectors = new Sectors();
  const waiting: Waiting[] = [];
  const runs: Run[] = [];
  for (const key of order) {
    const clump = key % CLUMPS;
    around.take(clumps.boxes, clump * 6);
    const { start, end, farthest } = around;
    const nearest = Math.floor(key / CLUMPS) / 1000;
    // Those who wait stand in the order of their distance, the nearest last.
    for (let next = waiting.at(-1); next !== undefined && next.farthest < nearest; next = waiting.at(-1)) {
      waiting.pop();
      cast(sectors, made, next);
    }
    if (sectors.holds(start, end, around.shadowNear, around.shadowFar)) continue;
    const first = made.made;
    made.limited = false;
    add(clump);
    const count = made.made - first;
    if (count === 0) continue;
    runs.push({ clump, first, count });
    if (count > MOST) continue;
    const whole = convex[clumps.group[clump] ?? 0] === 1 && !made.limited;
    const one = { farthest, first, count, start, end, whole };
    let at = waiting.length;
    while (at > 0 && (waiting[at - 1]?.farthest ?? 0) < farthest) at -= 1;
    waiting.splice(at, 0, one);
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
function ordered({ count, numbers, sides, outline, solid, facet }: Shadows, runs: readonly Run[]): Shadows {
  const sorted = {
    count,
    numbers: new Float64Array(count * STRIDE),
    sides: new Uint8Array(count),
    outline: new Uint8Array(count),
    solid: new Int32Array(count),
    facet: new Int32Array(count),
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
