import type { Vec2 } from '../../base/vector.ts';
import { heading, leftOf, moved, span } from '../segment.ts';
import type { Block } from '../structure.ts';
import { block } from './parts.ts';

/** Posts along a line. */
export interface PostRow {
  readonly from: Vec2;
  readonly to: Vec2;
  /** How many, the first at `from` and the last at `to`; one alone stands in the middle. */
  readonly count: number;
  /** Side of a square post, turned along the line, m. */
  readonly thickness: number;
  readonly height: number;
  /** What one of them is called: "Bollard" gives "Bollard 1", "Bollard 2" … */
  readonly name: string;
}

/** The greatest number of posts in one row: more is a fence. */
export const MOST_POSTS = 200;

/**
 * Posts at equal distances along a line, as blocks; their ids are `post-1`, `post-2` … Posts that would run into one
 * another stay apart by as many being left out as must be.
 * @throws RangeError where the line has no length
 */
export function postsAlong({ from, to, count, thickness, height, name }: PostRow): readonly Block[] {
  const along = heading(from, to);
  const length = span(from, to);
  const room = Math.floor(length / (thickness * CLEAR)) + 1;
  const posts = Math.max(0, Math.min(Math.floor(count), room, MOST_POSTS));
  const across = leftOf(along);
  const half = thickness / 2;
  return Array.from({ length: posts }, (_, k) => {
    const at = moved(from, along, posts === 1 ? length / 2 : (length * k) / (posts - 1));
    const corner = (forth: number, left: number): Vec2 => moved(moved(at, along, forth), across, left);
    const ring = [corner(-half, -half), corner(half, -half), corner(half, half), corner(-half, half)];
    return block(`post-${k + 1}`, `${name} ${k + 1}`, ring, height);
  });
}

/** Posts stand at least this many thicknesses apart, middle to middle. */
const CLEAR = 1.5;

/** How many posts stand along a line at most `spacing` metres apart, both ends included. */
export const postCount = (length: number, spacing: number): number =>
  spacing > 0 && length > 0 ? Math.ceil(length / spacing - 1e-9) + 1 : 1;
