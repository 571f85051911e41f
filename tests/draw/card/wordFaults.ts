import { boxesMeet, boxOfText } from '../../../src/draw/card/pen.ts';
import type { Page, PageText } from '../../../src/exchange/paper/page.ts';

/** The lines of text of a page that say something. */
export const textsOf = ({ items }: Page): readonly PageText[] =>
  items.filter((item): item is PageText => item.kind === 'text' && item.text !== '');

/** Words that lie on one another, or off the paper's margin. */
export function wordFaults(page: Page): string[] {
  const boxes = textsOf(page).map((one) => ({ text: one.text, box: boxOfText(one) }));
  const meet = boxes.flatMap((one, at) =>
    boxes
      .slice(at + 1)
      .flatMap((two) => (boxesMeet(one.box, two.box, -0.05) ? [`“${one.text}” on “${two.text}”`] : [])),
  );
  const off = boxes.flatMap(({ text, box }) =>
    box.x < 10.9 ||
    box.y < 10.5 ||
    box.x + box.width > page.width - 10.9 ||
    box.y + box.height > page.height - 10.5
      ? [`“${text}” off the page`]
      : [],
  );
  return [...meet, ...off];
}
