import type { CardCaution } from './cautionBlock.ts';
import type { Laid } from './flow.ts';
import { printable, shortened, textWidth, wrapped } from './letters.ts';
import { GREY, INK, path, rect, SIZE, text, through, WHITE } from './pen.ts';
import type { PageItem } from '../../exchange/paper/page.ts';

/** What a card is of, and what it rests on. */
export interface CardTitle {
  readonly camera: string;
  readonly site: string;
  /** "Card 1 of 3". */
  readonly number: string;
  /** As whoever prints it says it: "25 November 2026". */
  readonly date: string;
  /** By which a plan is told from a later one: "plan 3F9A-1C02". */
  readonly state: string;
  readonly conditions: string;
  /** Name of the edition of the standard. */
  readonly edition: string;
}

const NOTE = 'Check on site before you drill.';
const BAND = 9;

/** Title, what it rests on, and whether it may be drilled from. */
export function headBlock(
  title: CardTitle,
  place: string,
  cautions: readonly CardCaution[] | null,
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): Laid {
  const right = x + width;
  const column = width * 0.44;
  const left = width - column - 4;
  const whole = printable(`Drill card ${title.camera}`);
  const size = [SIZE.title, 5.2, 4.2].find((one) => textWidth(whole, one, true) <= left) ?? 4.2;
  const name = shortened(whole, left, size, true);
  const lines = wrapped(printable(place), left, SIZE.head).slice(0, 2);
  const told = [
    `${title.number}, ${title.date}, ${title.state}`,
    `Conditions: ${title.conditions}. ${title.edition}`,
    NOTE,
  ];
  const rule = y + (lines.length > 1 ? 17.4 : 14.4);
  const lacking = lackingOf(cautions);
  return {
    items: [
      text(x, y + 5, name, { size, bold: true }),
      ...lines.map((line, row) => text(x, y + 10.2 + row * 4, line, { size: SIZE.head })),
      text(right, y + 3, shortened(printable(title.site), column, SIZE.head, true), {
        size: SIZE.head,
        bold: true,
        anchor: 'end',
      }),
      ...told.map((line, row) =>
        text(right, y + 6.8 + row * 3.2, shortened(printable(line), column, SIZE.small + 0.1), {
          size: SIZE.small + 0.1,
          ink: GREY,
          anchor: 'end',
        }),
      ),
      path(
        through([
          [x, rule],
          [right, rule],
        ]),
        { line: INK, width: 0.6 },
      ),
      ...(lacking === null ? [] : notReadyBand(lacking, { x, y: rule + 1.4, width })),
    ],
    height: rule - y + (lacking === null ? 1 : BAND + 1.6),
  };
}

/** What keeps a card from being drilled from; null: nothing that is known. */
export function lackingOf(cautions: readonly CardCaution[] | null): string | null {
  if (cautions === null) return 'Cautions are not worked out yet.';
  const stops = cautions.filter(({ isStop }) => isStop);
  const open = stops.filter(({ ticked }) => !ticked).length;
  if (open === 0) return null;
  const which = open < stops.length ? `${open} of ${stops.length}` : String(open);
  return `Do not drill: ${which} ${stops.length === 1 ? 'thing' : 'things'} to look at first ${open === 1 ? 'is' : 'are'} not ticked below.`;
}

function notReadyBand(
  lacking: string,
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): readonly PageItem[] {
  const sign = 'NOT READY';
  const size = 6;
  const after = textWidth(sign, size, true) + 8;
  return [
    rect({ x, y, width, height: BAND - 1.4 }, { fill: INK }),
    text(x + 3, y + 5.9, sign, { size, bold: true, ink: WHITE }),
    text(x + after, y + 4.9, shortened(printable(lacking), width - after - 3, SIZE.head), {
      size: SIZE.head,
      ink: WHITE,
    }),
  ];
}
