import type { DrillFacts } from '../../assess/card/drillFacts.ts';
import type { LengthUnit } from '../../base/length.ts';
import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { elevation } from './elevation.ts';
import { HEAD, heading } from './flow.ts';
import { printable, shortened, textWidth, wrapped } from './letters.ts';
import { GREY, INK, path, SIZE, text, through } from './pen.ts';
import { plateDetail } from './plateDetail.ts';
import { poleElevation, polePlan } from './polePlan.ts';
import { soffitDetail } from './soffitDetail.ts';
import type { Reading } from './tapedWords.ts';

/** Room of the caption below the drawing, mm. */
const CAPTION = 4.4;
const GAP = 4;
/** A line of the legend, mm. */
const LEGEND = 3;

/** Where the hole goes: the wall, taped from real edges, and the plate beside it. */
export function whereBlock(
  facts: DrillFacts,
  box: PageBox,
  reading: Reading,
  paper: string,
): readonly PageItem[] {
  const { spot } = facts;
  const inner: PageBox = { ...box, y: box.y + HEAD, height: box.height - HEAD - CAPTION };
  const caption = box.y + box.height - 1;
  const unit = reading.units === 'feet' ? 'feet and inches' : 'millimetres';
  const head = [
    ...heading(box.x, box.y, '1. Where the hole goes'),
    text(box.x + box.width, box.y + 3.4, `Sizes in ${unit}, from real edges to the hole, not to the lens.`, {
      size: SIZE.small,
      ink: GREY,
      anchor: 'end',
    }),
  ];
  if (spot.kind === 'pole') {
    const left = { ...inner, width: inner.width * 0.36 };
    const right = { ...inner, x: inner.x + left.width + GAP * 2, width: inner.width - left.width - GAP * 2 };
    const post = poleElevation(spot, facts.lens.height, left, reading);
    const plan = polePlan({ spot, camera: facts.camera }, right, reading.units);
    return [
      ...head,
      ...post.items,
      ...plan.items,
      ...captionItems(left, caption, `The post, 1:${post.scale}`, null, reading.units),
      ...captionItems(
        right,
        caption,
        `From above, north at the top, 1:${plan.scale} on ${paper}.`,
        plan.scale,
        reading.units,
      ),
    ];
  }
  const side = spot.kind === 'soffit' ? 52 : 33;
  const leftOf = (rows: number): PageBox => ({
    ...inner,
    width: inner.width - side - GAP,
    height: inner.height - rows * LEGEND,
  });
  const right = { ...inner, x: inner.x + inner.width - side, width: side };
  const first = elevation(spot, leftOf(0), reading);
  // What the numbers on the wall are is never cut short: it takes what lines it needs.
  const legend = wrapped(printable(first.legend.join(', ')), leftOf(0).width, SIZE.small);
  const left = leftOf(legend.length);
  const wall = legend.length === 0 ? first : elevation(spot, left, reading);
  const detail =
    spot.kind === 'soffit'
      ? soffitDetail(spot, right, reading.units)
      : plateDetail(spot.plate, right, reading.units);
  const part = wall.isPart ? 'part of the wall, ' : '';
  const isIndoors = spot.kind === 'soffit' && spot.under === 'ceiling';
  const board = isIndoors ? 'The ceiling from above' : 'The soffit from above';
  const detailWords = spot.kind === 'soffit' ? board : 'The plate';
  const corner = spot.kind === 'corner' ? ' The bracket sits on the corner itself.' : '';
  return [
    ...head,
    ...wall.items,
    ...detail.items,
    ...legend.map((line, row) =>
      text(left.x, caption - (legend.length - row) * LEGEND, line, { size: SIZE.small }),
    ),
    ...captionItems(
      left,
      caption,
      `Seen from ${isIndoors ? 'inside' : 'outside'}, ${part}1:${wall.scale} on ${paper}.${corner}`,
      wall.scale,
      reading.units,
    ),
    ...captionItems(right, caption, `${detailWords}, 1:${detail.scale}`, null, reading.units),
  ];
}

/** A bar of a round length, on paper at most this long, mm. */
const LONGEST_BAR = 28;

/** The caption of a drawing, and a bar by which a copy that was printed too small is found out. */
function captionItems(
  { x, width }: PageBox,
  y: number,
  words: string,
  scale: number | null,
  units: LengthUnit,
): readonly PageItem[] {
  if (scale === null)
    return [text(x, y, shortened(printable(words), width, SIZE.small), { size: SIZE.small, ink: GREY })];
  const one = units === 'feet' ? 0.3048 : 1;
  const steps = [50, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1];
  const count = steps.find((step) => (step * one * 1000) / scale <= LONGEST_BAR) ?? 0.1;
  const long = (count * one * 1000) / scale;
  const label = `${count} ${units === 'feet' ? 'ft' : 'm'}`;
  const barEnd = x + width - textWidth(label, SIZE.small) - 1.2;
  return [
    text(x, y, shortened(printable(words), barEnd - long - x - 2, SIZE.small), {
      size: SIZE.small,
      ink: GREY,
    }),
    path(
      through([
        [barEnd - long, y - 1.4],
        [barEnd - long, y],
        [barEnd, y],
        [barEnd, y - 1.4],
      ]),
      { line: INK, width: 0.3 },
    ),
    text(x + width, y, label, { size: SIZE.small, anchor: 'end' }),
  ];
}
