import type { PageItem } from '../../exchange/paper/page.ts';
import { HEAD, heading } from './flow.ts';
import { printable, textWidth, wrapped } from './letters.ts';
import { GREY, INK, path, rect, SIZE, text, through, WHITE } from './pen.ts';

/** A caution as it stands on a card. */
export interface CardCaution {
  readonly id: string;
  readonly isStop: boolean;
  readonly ticked: boolean;
  /** What is, with its figure; then what to do. */
  readonly said: string;
  readonly advice: string;
  /** "common practice, no source". */
  readonly status: string;
}

export interface CautionBlock {
  readonly height: number;
  at(x: number, y: number): readonly PageItem[];
}

const BOX = 2.6;

/** Most rules have no source; the heading says so once. */
const COMMON = /^common practice/u;

const fullText = ({ said, advice, status }: CardCaution, isNew: boolean): string =>
  [said, advice, COMMON.test(status) || !isNew ? '' : `[${status}]`].filter((part) => part !== '').join(' ');

/**
 * What to know before drilling, in letters of a size; each stop with a box to tick.
 * @param most where even the smallest letters take more, what to do is left out of the last ones, never of a stop
 */
export function cautionBlock(
  cautions: readonly CardCaution[] | null,
  width: number,
  size: number,
  most = Infinity,
): CautionBlock {
  const lead = size * 1.24;
  const column = width - BOX - 2.4;
  const all = cautions ?? [];
  const linesOf = (one: CardCaution, isShort: boolean) =>
    wrapped(
      printable(isShort ? one.said : fullText(one, all.find(({ status }) => status === one.status) === one)),
      column,
      size,
    );
  let short = 0;
  const layout = () => all.map((one, at) => linesOf(one, !one.isStop && at >= all.length - short));
  const heightOf = (lines: readonly (readonly string[])[]): number =>
    HEAD + lines.reduce((sum, one) => sum + one.length * lead + 0.7, 0) + (all.length === 0 ? lead : 0);
  let lines = layout();
  while (heightOf(lines) > most && short < all.length) {
    short += 1;
    lines = layout();
  }
  return {
    height: heightOf(lines),
    at: (x, y) => {
      const title = '6. Before you drill';
      const about = 'Tick what you have looked at. Where no source stands, it is common practice.';
      const items: PageItem[] = [
        ...heading(x, y, title),
        text(x + textWidth(title, SIZE.head, true) + 3, y + 3.4, about, { size: SIZE.small, ink: GREY }),
      ];
      let top = y + HEAD;
      all.forEach((one, at) => {
        items.push(...boxItems(one, x, top, size));
        for (const line of lines[at] ?? []) {
          items.push(text(x + BOX + 2, top + size * 0.86, line, { size, bold: false }));
          top += lead;
        }
        top += 0.7;
      });
      if (all.length === 0)
        items.push(
          text(
            x,
            top + size * 0.86,
            cautions === null ? 'Not worked out yet.' : 'Nothing found in the plan. Look all the same.',
            {
              size,
            },
          ),
        );
      return items;
    },
  };
}

/** A box to tick for a stop, ticked or not; a dot for the others. */
function boxItems(
  { isStop, ticked }: CardCaution,
  x: number,
  top: number,
  size: number,
): readonly PageItem[] {
  const side = Math.min(BOX, size * 0.95);
  const y = top + size * 0.02;
  if (!isStop) return [rect({ x: x + 0.9, y: top + size * 0.36, width: 0.8, height: 0.8 }, { fill: INK })];
  return [
    rect({ x, y, width: side, height: side }, { fill: WHITE, line: INK, width: 0.35 }),
    ...(ticked
      ? [
          path(
            through([
              [x + side * 0.2, y + side * 0.5],
              [x + side * 0.42, y + side * 0.75],
              [x + side * 0.85, y + side * 0.2],
            ]),
            { line: INK, width: 0.45 },
          ),
        ]
      : []),
  ];
}
