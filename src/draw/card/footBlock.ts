import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { printable, shortened, textWidth } from './letters.ts';
import { GREY, INK, path, SIZE, text, through } from './pen.ts';

/** Room at the foot of the page, mm. */
export const FOOT = 20;

/** Fields for how it was built, by id, in the order that they are filled in. */
export const AS_BUILT: readonly { readonly id: string; readonly label: string; readonly share: number }[] = [
  { id: 'height', label: 'Lens height', share: 1 },
  { id: 'turn', label: 'Turn', share: 0.8 },
  { id: 'tilt', label: 'Tilt', share: 0.8 },
  { id: 'lens', label: 'Lens', share: 0.9 },
  { id: 'serial', label: 'Serial no.', share: 1.5 },
  { id: 'by', label: 'Fitted by', share: 1.9 },
  { id: 'date', label: 'Date', share: 1.1 },
  { id: 'note', label: 'Note', share: 3 },
];

/** Noted too, but printed where the hole comes out. */
export const ROOM_FIELD = { id: 'room', label: 'Room where it comes out' } as const;

const LAST =
  'Nothing drawn here proves a place safe: detect cables and pipes from both sides. Local codes and licensed practice come first. Edges off by over 20 mm: stop and ask.';

/** What was built, to write on or as it was typed, and what comes before everything drawn here. */
export function footBlock(asBuilt: Readonly<Record<string, string>>, box: PageBox): readonly PageItem[] {
  const { x, y, width } = box;
  const rows = [AS_BUILT.slice(0, 5), AS_BUILT.slice(5)];
  return [
    path(
      through([
        [x, y + 0.6],
        [x + width, y + 0.6],
      ]),
      { line: INK, width: 0.5 },
    ),
    ...rows.flatMap((fields, row) => {
      const all = fields.reduce((sum, { share }) => sum + share, 0);
      const gap = 3;
      const room = width - gap * (fields.length - 1);
      let left = x;
      return fields.flatMap(({ id, label, share }): PageItem[] => {
        const wide = (room * share) / all;
        const at = left;
        left += wide + gap;
        const line = y + 6.4 + row * 5.6;
        const name = textWidth(label, SIZE.body) + 1.4;
        const typed = asBuilt[id] ?? '';
        return [
          text(at, line, label, { ink: GREY }),
          path(
            through([
              [at + name, line + 0.6],
              [at + wide, line + 0.6],
            ]),
            { line: GREY, width: 0.2 },
          ),
          ...(typed === ''
            ? []
            : [
                text(at + name + 0.6, line, shortened(printable(typed), wide - name - 0.8, SIZE.body, true), {
                  bold: true,
                }),
              ]),
        ];
      });
    }),
    text(x, y + FOOT - 1.4, LAST, { size: SIZE.small }),
  ];
}
