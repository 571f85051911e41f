import type { PageItem } from '../../exchange/paper/page.ts';
import { printable, shortened, textWidth, wrapped } from './letters.ts';
import { GREY, INK, path, SIZE, text, through } from './pen.ts';

/** A paragraph or heading that knows how high it is. */
export interface Laid {
  readonly items: readonly PageItem[];
  /** mm */
  readonly height: number;
}

const LEADING = 1.22;

/** Paragraphs in a column, each in lines. */
export function paragraphs(
  all: readonly string[],
  at: { readonly x: number; readonly y: number; readonly width: number },
  look: {
    readonly size?: number;
    readonly bold?: boolean;
    readonly ink?: string;
    readonly gap?: number;
  } = {},
): Laid {
  const { size = SIZE.body, bold = false, ink = INK, gap = 0.9 } = look;
  const items: PageItem[] = [];
  let y = at.y;
  for (const words of all) {
    for (const line of wrapped(printable(words), at.width, size, bold)) {
      items.push(text(at.x, y + size * 0.86, line, { size, bold, ink }));
      y += size * LEADING;
    }
    y += gap;
  }
  return { items, height: Math.max(0, y - at.y) };
}

/** Room that a heading takes, mm. */
export const HEAD = 6;

/** A heading with what is told beside it in small letters. */
export const heading = (x: number, y: number, words: string): readonly PageItem[] => [
  text(x, y + 3.4, words, { size: SIZE.head, bold: true }),
];

/** Rows of what and how much, with rules between. */
export function table(
  rows: readonly (readonly [string, string])[],
  at: { readonly x: number; readonly y: number; readonly width: number },
  pitch: number,
): Laid {
  const items = rows.flatMap(([what, value], row): PageItem[] => {
    const y = at.y + row * pitch;
    const size = Math.min(SIZE.body, pitch * 0.66);
    const lines = fitted(printable(what), printable(value), at.width, size);
    return [
      text(at.x, y + pitch * 0.7, lines.what, { size: lines.size }),
      text(at.x + at.width, y + pitch * 0.7, lines.value, { size: lines.size, bold: true, anchor: 'end' }),
      path(
        through([
          [at.x, y + pitch],
          [at.x + at.width, y + pitch],
        ]),
        { line: GREY, width: 0.1 },
      ),
    ];
  });
  return { items, height: rows.length * pitch };
}

/** What and value side by side: smaller where they would meet, and what is said cut short where even that is too wide. */
function fitted(
  what: string,
  value: string,
  width: number,
  size: number,
): { readonly what: string; readonly value: string; readonly size: number } {
  for (const one of [size, size * 0.9, size * 0.8])
    if (textWidth(what, one) + textWidth(value, one, true) + 2 <= width) return { what, value, size: one };
  const least = size * 0.8;
  const room = Math.max(width * 0.25, width - textWidth(value, least, true) - 2);
  const cut = shortened(what, room, least);
  return { what: cut, value: shortened(value, width - textWidth(cut, least) - 2, least, true), size: least };
}
