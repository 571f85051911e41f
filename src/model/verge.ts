import { tan } from '../base/angle.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import { cornerAt } from './ring.ts';
import type { Loop } from './roofShape.ts';
import { crossOf, difference, dotOf, heading, moved, span } from './segment.ts';
import type { Ring } from './structure.ts';

/** The upper edge of a gable wall: up from the eaves before its start to the ridge, and down to those after its end. */
export interface Verge {
  readonly up: readonly Vec3[];
  readonly peak: Vec3;
  readonly down: readonly Vec3[];
  /** For each edge of the wall's run, its top line, from above its end back to above its start. */
  readonly tops: readonly Loop[];
}

/** The place between two ends of a wall that is as far from the eaves beside the one as from those beside the other. */
export function peakBetween(
  [start, end]: readonly [Vec2, Vec2],
  before: Vec2,
  after: Vec2,
  eavesZ: number,
  pitch: number,
): Vec3 {
  const along = heading(start, end);
  const [sinStart, sinEnd] = [crossOf(before, along), crossOf(along, after)];
  const s = (span(start, end) * sinEnd) / (sinStart + sinEnd);
  const [x, y] = moved(start, along, s);
  return [x, y, eavesZ + s * sinStart * tan(pitch)];
}

/** Nearer than this to the ridge a corner stands below it, m. */
const BELOW_PEAK = 1e-6;

/**
 * The verge over the corners of a straight run of wall. Where the run has corners between its ends, the verge has them too,
 * so that the walls on both sides of such a corner end in one place.
 * @param start,end  where the eaves before and after the wall meet its plane
 */
export function vergeOver(
  outline: Ring,
  run: readonly number[],
  eavesZ: number,
  [start, peak, end]: readonly [Vec3, Vec3, Vec3],
): Verge {
  const corners = run.map((k) => cornerAt(outline, k));
  const [first, last] = [cornerAt(corners, 0), cornerAt(corners, -1)];
  const along = heading(first, last);
  const at = ([x, y]: Vec3 | Vec2): number => dotOf(difference([x, y], first), along);
  const [s0, s1, s2] = [at(start), at(peak), at(end)];
  const heightAt = (s: number): number =>
    s <= s1
      ? start[2] + ((peak[2] - start[2]) * (s - s0)) / (s1 - s0)
      : end[2] + ((peak[2] - end[2]) * (s2 - s)) / (s2 - s1);
  const middle = corners.slice(1, -1);
  const below = middle.find((corner) => Math.abs(at(corner) - s1) < BELOW_PEAK);
  const top: Vec3 = below ? [below[0], below[1], peak[2]] : peak;
  const over = middle.map((corner): Vec3 =>
    corner === below ? top : [corner[0], corner[1], heightAt(at(corner))],
  );
  const line: readonly Vec3[] = [
    start,
    ...over.filter((p) => p !== top && at(p) < s1),
    top,
    ...over.filter((p) => p !== top && at(p) >= s1),
    end,
  ];
  // The whole line along the wall, with its own ends at the eaves where they lie within those of the verge.
  const foot = (corner: Vec2): Vec3 => [corner[0], corner[1], eavesZ];
  const whole: readonly Vec3[] = [foot(first), ...line, foot(last)];
  const joints = [0, ...over.map((p) => whole.indexOf(p)), whole.length - 1];
  const tops = joints.slice(1).map((to, k) => whole.slice(joints[k] ?? 0, to + 1).reverse());
  const peakAt = line.indexOf(top);
  return { up: line.slice(0, peakAt), peak: top, down: line.slice(peakAt + 1), tops };
}
