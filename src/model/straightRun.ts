import type { Vec2 } from '../base/vector.ts';
import { cornerAt } from './ring.ts';
import { crossOf, difference, dotOf, heading, span } from './segment.ts';
import type { Ring } from './structure.ts';

/** Corners this near to the line between their neighbours lie on a straight run, m. */
const STRAIGHT = 1e-5;

/** A ring without its corners on straight runs. */
export interface Straightened {
  readonly ring: Ring;
  /** For each edge of `ring`, the corners of the ring given from its start to its end, both included. */
  readonly runs: readonly (readonly number[])[];
}

/** Takes out the corners that lie on a straight run. */
export function straightened(ring: Ring): Straightened {
  const start = firstBend(ring);
  const kept = [start];
  for (let k = start + 1; k < start + ring.length; k++) {
    const anchor = kept[kept.length - 1] ?? start;
    if (!isStraight(ring, anchor, k)) kept.push(k);
  }
  // In the order of the ring given, from its first corner on.
  const order = [...kept].map((k) => k % ring.length).sort((a, b) => a - b);
  const runs = order.map((from, i) => {
    const next = order[i + 1] ?? (order[0] ?? 0) + ring.length;
    return Array.from({ length: next - from + 1 }, (_, k) => (from + k) % ring.length);
  });
  return { ring: order.map((k) => cornerAt(ring, k)), runs };
}

/** Whether all corners after `anchor` up to `last` lie on the line from it to the one after. */
function isStraight(ring: Ring, anchor: number, last: number): boolean {
  const [a, b] = [cornerAt(ring, anchor), cornerAt(ring, last + 1)];
  if (span(a, b) < STRAIGHT) return false;
  const along = heading(a, b);
  for (let k = anchor + 1; k <= last; k++) {
    const away = difference(cornerAt(ring, k), a);
    if (Math.abs(crossOf(along, away)) > STRAIGHT) return false;
    if (dotOf(along, away) <= dotOf(along, difference(cornerAt(ring, k - 1), a))) return false;
  }
  return true;
}

/** The corner at which the ring turns most, which is on no straight run. */
function firstBend(ring: Ring): number {
  let [best, least] = [0, Infinity];
  ring.forEach((corner, k) => {
    const onwards = dotOf(heading(cornerAt(ring, k - 1), corner), heading(corner, cornerAt(ring, k + 1)));
    if (onwards < least - 1e-9) [best, least] = [k, onwards];
  });
  return best;
}

/** The corners of a run strictly between its ends. */
export const between = (ring: Ring, run: readonly number[]): Vec2[] =>
  run.slice(1, -1).map((k) => cornerAt(ring, k));
