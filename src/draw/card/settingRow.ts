import type { DrillFacts } from '../../assess/card/drillFacts.ts';
import type { LengthUnit } from '../../base/length.ts';
import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { isVarifocal, markWords, settingRows } from './cardWords.ts';
import type { CardInput } from './cardPage.ts';
import { heading, HEAD, paragraphs, table } from './flow.ts';
import { GREY, SIZE, text } from './pen.ts';
import { panSketch, tiltSketch } from './sketches.ts';

/** Heights of a row of the page: what it must have, and what it would have, mm. */
export interface Need {
  readonly least: number;
  readonly best: number;
}

/** A row of the settings is so high, mm. */
const PITCH = { least: 3.3, best: 4.3 } as const;
/** The sketches need so much. */
const SKETCH = { least: 42, best: 52 } as const;
const MARK_HEAD = 4.2;

/** How high the settings are, across a page of a width. */
export function settingNeed({ facts, reading }: CardInput, width: number): Need {
  const rows = settingRows(facts, reading.units).length;
  const marks = marksOf(facts, reading.units);
  const lines = paragraphs(marks, { x: 0, y: 0, width: (width - 6) / 2 }, MARKS);
  const rest = HEAD + 1 + (marks.length > 0 ? lines.height + MARK_HEAD : 0);
  return {
    least: Math.max(SKETCH.least, rest + rows * PITCH.least),
    best: Math.max(SKETCH.best, rest + rows * PITCH.best),
  };
}

const MARKS = { size: SIZE.small, gap: 0.3 } as const;

const marksOf = (facts: DrillFacts, units: LengthUnit): readonly string[] =>
  isVarifocal(facts) ? markWords(facts, units) : [];

/** How whoever reads the sketch from above stands. */
function standWords({ spot }: DrillFacts): string {
  if (spot.kind === 'soffit' && spot.under === 'canopy') return 'looking out over the edge';
  const what = { wall: 'wall', soffit: 'wall', corner: 'corner', pole: 'post' }[spot.kind];
  return `your back to the ${what}`;
}

/** Turn and tilt, and how the camera is set. */
export function settingRow(input: CardInput, box: PageBox): readonly PageItem[] {
  const { facts, section, reading } = input;
  const half = (box.width - 6) / 2;
  const sketch = (half - 4) / 2;
  const foot = box.y + box.height - 3.4;
  const sketches: PageBox = { x: box.x, y: box.y + HEAD, width: sketch, height: foot - box.y - HEAD - 0.6 };
  const x = box.x + half + 6;
  const marks = marksOf(facts, reading.units);
  const rows = settingRows(facts, reading.units);
  const lines = paragraphs(marks, { x, y: 0, width: half }, MARKS);
  const markHead = marks.length > 0 ? MARK_HEAD : 0;
  const pitch = Math.min(PITCH.best, (box.height - HEAD - lines.height - markHead) / rows.length);
  const set = table(rows, { x, y: box.y + HEAD - 1, width: half }, pitch);
  const marksAt = box.y + HEAD + set.height + 0.6;
  return [
    ...heading(box.x, box.y, '4. Then turn and tilt, in whole degrees'),
    ...panSketch(facts, sketches),
    ...tiltSketch(facts, section, { ...sketches, x: box.x + sketch + 4 }, reading.units),
    text(box.x, foot + 2.4, `From above, ${standWords(facts)}`, { size: SIZE.small, ink: GREY }),
    text(box.x + sketch + 4, foot + 2.4, 'From the side, not to scale', { size: SIZE.small, ink: GREY }),
    ...heading(x, box.y, '5. Set the camera'),
    ...set.items,
    ...(marks.length === 0
      ? []
      : [
          text(x, marksAt + 2.6, 'Lens, by two marks', { bold: true }),
          ...paragraphs(marks, { x, y: marksAt + markHead - 0.4, width: half }, MARKS).items,
        ]),
  ];
}
