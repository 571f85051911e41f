import { INSIDE, type Cut, type RowScene } from './rowScene.ts';

/** Codes beside the indices of solids. */
export const OPEN = -1;
export const WITHIN = -2;

/** A stretch of a line and who hides it first. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly owner: number;
}

/** Who hides each stretch of the line y = const first, exactly: sorted ends, and between them the nearest by its linear depth. */
export function alongRow(scene: RowScene, y: number): Stretch[] {
  const [left, right] = scene.span(y);
  if (!(left < right)) return [];
  const cuts = scene.cuts(y).filter(({ from, to }) => from < right && to > left);
  const ends = [left, right];
  for (const { from, to } of cuts) {
    if (from > left) ends.push(from);
    if (to < right) ends.push(to);
  }
  ends.sort((one, two) => one - two);
  const found: Stretch[] = [];
  for (let at = 0; at + 1 < ends.length; at += 1) {
    const [from, to] = [ends[at] ?? 0, ends[at + 1] ?? 0];
    if (to - from < 1e-13) continue;
    const middle = (from + to) / 2;
    let rank = 0;
    for (const cut of cuts) if (cut.from < middle && cut.to > middle && cut.rank > rank) rank = cut.rank;
    if (rank === 0) found.push({ from, to, owner: OPEN });
    else if (rank === INSIDE) found.push({ from, to, owner: WITHIN });
    else
      frontOf(
        cuts.filter((cut) => cut.rank === rank && cut.from < middle && cut.to > middle),
        from,
        to,
        found,
        0,
      );
  }
  return found;
}

const nearAt = ({ from, to, nearFrom, nearTo }: Cut, x: number): number =>
  nearFrom + ((x - from) / (to - from)) * (nearTo - nearFrom);

/** The nearest at a place; on a tie the lower index. */
function leader(cuts: readonly Cut[], x: number): Cut | undefined {
  let best: Cut | undefined;
  let most = 0;
  for (const cut of cuts) {
    const near = nearAt(cut, x);
    const tie = best !== undefined && Math.abs(near - most) <= 1e-9 * Math.max(near, most);
    if (best === undefined || (tie ? cut.solid < best.solid : near > most)) [best, most] = [cut, near];
  }
  return best;
}

function frontOf(cuts: readonly Cut[], from: number, to: number, into: Stretch[], depth: number): void {
  const hair = (to - from) * 1e-6;
  const [first, last] = [leader(cuts, from + hair), leader(cuts, to - hair)];
  if (first === undefined || last === undefined) return;
  if (first.solid === last.solid || depth > 40) {
    into.push({ from, to, owner: first.solid });
    return;
  }
  const [d0, d1] = [nearAt(first, from) - nearAt(last, from), nearAt(first, to) - nearAt(last, to)];
  const meet = from + (d0 / (d0 - d1)) * (to - from);
  const cut = meet > from + hair && meet < to - hair ? meet : (from + to) / 2;
  frontOf(cuts, from, cut, into, depth + 1);
  frontOf(cuts, cut, to, into, depth + 1);
}

/** A border of a stretch, or a line of equal depth, at two heights of a slab: straight between them. */
interface Border {
  readonly low: number;
  readonly high: number;
  readonly nearLow: number;
  readonly nearHigh: number;
  /** 0 for a side of the frame. */
  readonly rank: number;
}

/**
 * Every y between which each stretch's ends run straight and in the same order, as far as they can be seen: corners of
 * shadows, and places where visible borders cross.
 */
export function breaksOf(scene: RowScene): number[] {
  const corners = scene.corner();
  const all: number[] = [];
  for (let at = 0; at + 1 < corners.length; at += 1) {
    const [low, high] = [corners[at] ?? 0, corners[at + 1] ?? 0];
    all.push(low);
    const inner = crossingsIn(scene, low, high).sort((one, two) => one - two);
    for (const y of inner) if (y - (all[all.length - 1] ?? low) > 1e-12 && high - y > 1e-12) all.push(y);
  }
  all.push(corners[corners.length - 1] ?? 0);
  return all;
}

function crossingsIn(scene: RowScene, low: number, high: number): number[] {
  const [y0, y1] = [low + (high - low) / 4, high - (high - low) / 4];
  const [one, two] = [scene.cuts(y0), scene.cuts(y1)];
  // Between corners the same triangles cut every line, in the same order.
  if (one.length !== two.length || one.some((cut, at) => cut.solid !== two[at]?.solid)) return [];
  const found: number[] = [];
  const borders = bordersOf(scene, one, two, y0, y1, found);
  for (let i = 0; i < borders.length; i += 1)
    for (let j = i + 1; j < borders.length; j += 1) {
      const [a, b] = [borders[i], borders[j]];
      if (a === undefined || b === undefined) continue;
      const [d0, d1] = [a.low - b.low, a.high - b.high];
      const share = d0 / (d0 - d1);
      const y = y0 + share * (y1 - y0);
      if (!(y > low && y < high)) continue;
      if (a.rank === 0 && b.rank === 0) found.push(y);
      else if (isVisible(scene, one, two, a, b, share, y)) found.push(y);
    }
  return found.filter((y) => y > low && y < high);
}

/** All borders of a slab; where two faces are equally near all along one row, that y goes into `jumps`. */
function bordersOf(
  scene: RowScene,
  one: Cut[],
  two: Cut[],
  y0: number,
  y1: number,
  jumps: number[],
): Border[] {
  const borders: Border[] = [];
  for (const { a, b, c } of scene.sides)
    if (Math.abs(a) > 1e-9 * Math.abs(b))
      borders.push({ low: -(b * y0 + c) / a, high: -(b * y1 + c) / a, nearLow: 0, nearHigh: 0, rank: 0 });
  const seen = new Set<string>();
  const put = (border: Border): void => {
    const key = `${border.low.toFixed(11)} ${border.high.toFixed(11)} ${border.nearLow.toFixed(8)} ${border.rank}`;
    if (seen.has(key)) return;
    seen.add(key);
    borders.push(border);
  };
  one.forEach((low, at) => {
    const high = two[at];
    if (high === undefined) return;
    const { rank } = low;
    put({ low: low.from, high: high.from, nearLow: low.nearFrom, nearHigh: high.nearFrom, rank });
    put({ low: low.to, high: high.to, nearLow: low.nearTo, nearHigh: high.nearTo, rank });
    for (let other = at + 1; other < one.length; other += 1) {
      const [otherLow, otherHigh] = [one[other], two[other]];
      if (otherLow === undefined || otherHigh === undefined) continue;
      const equal = equalDepth(low, high, otherLow, otherHigh);
      if (equal === null) continue;
      if (typeof equal === 'number') jumps.push(y0 + equal * (y1 - y0));
      else put(equal);
    }
  });
  return borders;
}

/**
 * Where two triangles of different solids are equally near, as a straight line; as a share of the way from low to high where
 * that line runs along the rows; null where they nowhere are.
 */
function equalDepth(low: Cut, high: Cut, otherLow: Cut, otherHigh: Cut): Border | number | null {
  if (low.solid === otherLow.solid || low.rank !== otherLow.rank || low.rank === INSIDE) return null;
  if (low.from > otherLow.to && high.from > otherHigh.to) return null;
  if (otherLow.from > low.to && otherHigh.from > high.to) return null;
  // The slab is twice as high as what lies between the two lines: difference of depth at its four corners.
  const oneSided = (a: Cut, b: Cut, c: Cut, d: Cut): boolean => {
    const [p, q] = [nearAt(a, a.from) - nearAt(b, a.from), nearAt(a, a.to) - nearAt(b, a.to)];
    const [r, s] = [nearAt(c, c.from) - nearAt(d, c.from), nearAt(c, c.to) - nearAt(d, c.to)];
    const all = [1.5 * p - 0.5 * r, 1.5 * q - 0.5 * s, 1.5 * r - 0.5 * p, 1.5 * s - 0.5 * q];
    return all.every((d_) => d_ > -1e-9) || all.every((d_) => d_ < 1e-9);
  };
  if (oneSided(low, otherLow, high, otherHigh) || oneSided(otherLow, low, otherHigh, high)) return null;
  const ahead = nearAt(low, low.from) - nearAt(otherLow, low.from);
  const behind = nearAt(high, low.from) - nearAt(otherHigh, low.from);
  const along = nearAt(low, low.to) - nearAt(otherLow, low.to) - ahead;
  if (Math.abs(along) < 1e-7 * Math.max(Math.abs(ahead), Math.abs(behind))) return ahead / (ahead - behind);
  const meet = (a: Cut, b: Cut): number => {
    const [d0, d1] = [nearAt(a, a.from) - nearAt(b, a.from), nearAt(a, a.to) - nearAt(b, a.to)];
    return a.from + (d0 / (d0 - d1)) * (a.to - a.from);
  };
  const [xl, xh] = [meet(low, otherLow), meet(high, otherHigh)];
  if (!Number.isFinite(xl) || !Number.isFinite(xh)) return null;
  return { low: xl, high: xh, nearLow: nearAt(low, xl), nearHigh: nearAt(high, xh), rank: low.rank };
}

/** Whether two borders cross in the frame and in front of everything else there. */
function isVisible(
  scene: RowScene,
  one: readonly Cut[],
  two: readonly Cut[],
  a: Border,
  b: Border,
  share: number,
  y: number,
): boolean {
  const mix = (low: number, high: number) => low + share * (high - low);
  const x = mix(a.low, a.high);
  const [left, right] = scene.span(y);
  if (x < left - 1e-7 || x > right + 1e-7) return false;
  const near = ({ nearLow, nearHigh, rank }: Border, top: number) =>
    rank === top ? mix(nearLow, nearHigh) : 0;
  const top = Math.max(a.rank, b.rank);
  const front = Math.max(near(a, top), near(b, top));
  for (let at = 0; at < one.length; at += 1) {
    const [low, high] = [one[at], two[at]];
    if (low === undefined || high === undefined || low.rank < top) continue;
    const [from, to] = [mix(low.from, high.from), mix(low.to, high.to)];
    if (x < from + 1e-8 || x > to - 1e-8) continue;
    if (low.rank > top) return false;
    const [n0, n1] = [mix(low.nearFrom, high.nearFrom), mix(low.nearTo, high.nearTo)];
    if (n0 + ((x - from) / (to - from)) * (n1 - n0) > front * (1 + 1e-7)) return false;
  }
  return true;
}

/**
 * Areas by who hides first (OPEN, WITHIN, or the index of a solid) in the frame of a rectilinear lens, else in the whole
 * window. Between breaks every length is linear, so that the line through the middle gives the exact area.
 */
export function areasByRows(scene: RowScene, breaks = breaksOf(scene)): Map<number, number> {
  const areas = new Map<number, number>();
  for (let at = 0; at + 1 < breaks.length; at += 1) {
    const [low, high] = [breaks[at] ?? 0, breaks[at + 1] ?? 0];
    for (const { from, to, owner } of alongRow(scene, (low + high) / 2))
      areas.set(owner, (areas.get(owner) ?? 0) + (to - from) * (high - low));
  }
  return areas;
}
