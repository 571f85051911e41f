import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { printable, shortened, textWidth } from './letters.ts';
import { GREY, INK, path, plated, SIZE, text, through, tick } from './pen.ts';

/** Room that a lane with one dimension takes, mm. */
export const LANE = 7.2;

/**
 * A dimension across in a lane of its own, so that no other label can be in its way: from an edge to the hole, its words above
 * the line, kept within the lane.
 * @param lane the room that it may take
 */
export function acrossLane(edge: number, hole: number, words: string, lane: PageBox): readonly PageItem[] {
  const y = lane.y + lane.height - 1.4;
  const { label, size, half } = fitted(words, lane.width);
  const middle = within((edge + hole) / 2, lane.x + half, lane.x + lane.width - half);
  return [
    dimensionLine([edge, y], [hole, y]),
    tick([edge, y]),
    tick([hole, y]),
    ...plated(text(middle, y - 1.3, label, { anchor: 'middle', bold: true, size })),
  ];
}

/** The same upwards, read from the right. */
export function upLane(edge: number, hole: number, words: string, lane: PageBox): readonly PageItem[] {
  const x = lane.x + lane.width - 1.4;
  const { label, size, half } = fitted(words, lane.height);
  const middle = within((edge + hole) / 2, lane.y + half, lane.y + lane.height - half);
  return [
    dimensionLine([x, edge], [x, hole]),
    tick([x, edge]),
    tick([x, hole]),
    ...plated(text(x - 1.3, middle, label, { anchor: 'middle', bold: true, size, turn: -90 })),
  ];
}

/** Words in the room there is: smaller first, and only then cut short, at the end, where the edge's name is. */
function fitted(words: string, room: number): { label: string; size: number; half: number } {
  const plain = printable(words);
  const sizes = [SIZE.body, 2.4, 2.1];
  const size = sizes.find((one) => textWidth(plain, one, true) <= room) ?? 2.1;
  const label = shortened(plain, room, size, true);
  return { label, size, half: textWidth(label, size, true) / 2 };
}

const dimensionLine = (from: readonly [number, number], to: readonly [number, number]): PageItem =>
  path(through([from, to]), { line: INK, width: 0.22 });

/** A line that carries an edge or the hole over to its dimension. */
export const witness = (from: readonly [number, number], to: readonly [number, number]): PageItem =>
  path(through([from, to]), { line: GREY, width: 0.16, dash: [0.9, 0.7] });

const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));
