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

/** The same upwards, read from the right; in two lines where one is too long. */
export function upLane(edge: number, hole: number, words: string, lane: PageBox): readonly PageItem[] {
  const x = lane.x + lane.width - 1.4;
  const { lines, size } = inLines(words, lane.height);
  const half = Math.max(...lines.map((line) => textWidth(line, size, true))) / 2;
  const middle = within((edge + hole) / 2, lane.y + half, lane.y + lane.height - half);
  return [
    dimensionLine([x, edge], [x, hole]),
    tick([x, edge]),
    tick([x, hole]),
    ...lines.flatMap((line, row) => {
      const at = x - 1.3 - (lines.length - 1 - row) * size * 1.12;
      return plated(text(at, middle, line, { anchor: 'middle', bold: true, size, turn: -90 }));
    }),
  ];
}

/** One line as large as may be, else two, which together are no wider than a lane. */
function inLines(words: string, room: number): { readonly lines: readonly string[]; readonly size: number } {
  const plain = printable(words);
  const one = [SIZE.body, 2.4].find((size) => textWidth(plain, size, true) <= room);
  if (one !== undefined) return { lines: [plain], size: one };
  const parts = plain.split(' ');
  const halves = parts.map((_, at): [string, string] => [
    parts.slice(0, at + 1).join(' '),
    parts.slice(at + 1).join(' '),
  ]);
  const longer = (lines: readonly string[]): number =>
    Math.max(...lines.map((line) => textWidth(line, SMALL, true)));
  // Broken where the longer half is shortest.
  const lines = halves.reduce((best, two) => (longer(two) < longer(best) ? two : best), [plain, '']);
  return { lines: lines.map((line) => shortened(line, room, SMALL, true)), size: SMALL };
}

/** Two lines of this size stand in a lane, mm. */
const SMALL = 2.1;

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
