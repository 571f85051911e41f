import type { Vec2 } from '../../../base/vector.ts';
import { chainEdges, firstMeet, type Meet } from '../../../model/meet.ts';

/** What of a chain runs into itself, in words, and the corner that is at fault (from nought). */
export interface Crossing {
  readonly text: string;
  readonly corner: number;
}

const MEND = 'Move it, or take it back with Backspace.';

/** The first crossing of a chain with itself; null where it keeps apart. */
export function crossingOf(corners: readonly Vec2[], closed: boolean): Crossing | null {
  const meet = firstMeet(chainEdges(corners, 0, closed));
  return meet && worded(meet, corners.length, closed);
}

function worded(meet: Meet, count: number, closed: boolean): Crossing {
  const edge = (index: number): string => `${index + 1}–${((index + 1) % count) + 1}`;
  if (meet.how === 'touches') {
    const corner = meet.corner.index % count;
    return { text: `Corner ${corner + 1} touches edge ${edge(meet.edge.index)}. ${MEND}`, corner };
  }
  const [early, late] = [meet.first.index, meet.second.index].toSorted((a, b) => a - b);
  if (early === undefined || late === undefined) throw new RangeError('two edges cross, or none');
  // The edge that was drawn later ends in the corner that is to be moved.
  const corner = (late + 1) % count;
  if (closed && corner === 0)
    return {
      text: `The edge that closes crosses edge ${edge(early)}. Place another corner, or take one back with Backspace.`,
      corner: count - 1,
    };
  return { text: `Corner ${corner + 1} crosses edge ${edge(early)}. ${MEND}`, corner };
}

const NUMBERS = ['None', 'One', 'Two', 'Three'];

/** "An outline needs three corners. Two are placed." */
export function tooFewWords(least: number, placed: number): string {
  const what = least === 3 ? 'An outline needs three corners.' : 'A line needs two corners.';
  return `${what} ${NUMBERS[placed] ?? placed} ${placed === 1 ? 'is' : 'are'} placed.`;
}
