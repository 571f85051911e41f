import type { DrillFacts } from '../../assess/card/drillFacts.ts';
import type { Section } from '../../assess/section/section.ts';
import { PAPER_MARGIN, paperOf, type PaperName } from './sheets.ts';
import type { Page, PageBox, PageItem } from '../../exchange/paper/page.ts';
import { cautionBlock, type CardCaution } from './cautionBlock.ts';
import { insideWords, isVarifocal, markWords, placeWords, settingRows } from './cardWords.ts';
import { heading, HEAD, paragraphs, table } from './flow.ts';
import { headBlock, type CardTitle } from './headBlock.ts';
import { insideCut } from './insideCut.ts';
import { footBlock, FOOT } from './footBlock.ts';
import { drawnItems, type Drawn } from './pictureItems.ts';
import { GREY, SIZE, text } from './pen.ts';
import { panSketch, tiltSketch } from './sketches.ts';
import type { Reading } from './tapedWords.ts';
import { whereBlock } from './whereBlock.ts';

/** The picture to be matched, with what its letters are and where they fall. */
export interface CardPicture {
  readonly drawn: Drawn;
  /** "a  Front door, left jamb, foot: 32 % across, 61 % down". */
  readonly landmarks: readonly string[];
}

/** All that stands on a card. */
export interface CardInput {
  readonly facts: DrillFacts;
  readonly section: Section | null;
  readonly title: CardTitle;
  readonly reading: Reading;
  readonly paper: PaperName;
  readonly picture: CardPicture | null;
  /** Null: not worked out. */
  readonly cautions: readonly CardCaution[] | null;
  /** What was noted of how it was built, by field. */
  readonly asBuilt: Readonly<Record<string, string>>;
}

const GAP = 3;
/** Rows of the page: least and best heights, mm. */
const WHERE = { least: 50, best: 88 } as const;
const MIDDLE = { least: 46, best: 56 } as const;
const SETTING = { least: 44, best: 52 } as const;

/** A camera's drill card as a page. */
export function cardPage(input: CardInput): Page {
  const { facts, title, paper } = input;
  const sheet = paperOf(paper);
  const x = PAPER_MARGIN;
  const width = sheet.width - 2 * PAPER_MARGIN;
  const head = headBlock(title, placeWords(facts), input.cautions, { x, y: PAPER_MARGIN, width });
  const top = PAPER_MARGIN + head.height + 2;
  const end = sheet.height - PAPER_MARGIN - FOOT;
  const room = end - top;
  const cautions = cautionsFor(input, width, room);
  const rows = shares(room - cautions.height - 3 * GAP);
  const where: PageBox = { x, y: top, width, height: rows.where };
  const middle: PageBox = { x, y: top + rows.where + GAP, width, height: rows.middle };
  const settings: PageBox = { x, y: middle.y + rows.middle + GAP, width, height: rows.setting };
  const below = settings.y + rows.setting + GAP;
  return {
    width: sheet.width,
    height: sheet.height,
    title: `Drill card ${facts.set.name}, ${title.site}`,
    sentence: sentenceOf(input),
    items: [
      ...head.items,
      ...whereBlock(facts, where, input.reading, sheet.name),
      ...middleRow(input, middle),
      ...settingRow(input, settings),
      ...cautions.at(x, below),
      ...footBlock(input.asBuilt, { x, y: end, width, height: FOOT }),
    ],
  };
}

/** Letters get smaller rather than that cautions take the drawing's room. */
function cautionsFor({ cautions }: CardInput, width: number, room: number) {
  const most = room - WHERE.least - MIDDLE.least - SETTING.least - 3 * GAP;
  for (const size of [SIZE.body, 2.5, SIZE.small, 2.1, 1.9]) {
    const block = cautionBlock(cautions, width, size);
    if (block.height <= most) return block;
  }
  return cautionBlock(cautions, width, 1.9, most);
}

/** What is left is shared out, each row at most at its best; what then remains goes to the elevation. */
function shares(room: number): { readonly where: number; readonly middle: number; readonly setting: number } {
  const least = WHERE.least + MIDDLE.least + SETTING.least;
  const spare = Math.max(0, room - least);
  const wish = WHERE.best - WHERE.least + (MIDDLE.best - MIDDLE.least) + (SETTING.best - SETTING.least);
  const share = Math.min(1, spare / wish);
  const middle = MIDDLE.least + share * (MIDDLE.best - MIDDLE.least);
  const setting = SETTING.least + share * (SETTING.best - SETTING.least);
  return { where: Math.max(WHERE.least, room - middle - setting), middle, setting };
}

/** Where the hole comes out, and the picture to match. */
function middleRow(input: CardInput, box: PageBox): readonly PageItem[] {
  const { facts, reading, picture } = input;
  const half = (box.width - 6) / 2;
  const cut: PageBox = { x: box.x, y: box.y + HEAD, width: 36, height: Math.min(34, box.height - HEAD) };
  const words = paragraphs(
    insideWords(facts.inside, reading.units),
    {
      x: box.x + 39,
      y: box.y + HEAD,
      width: half - 39,
    },
    { size: SIZE.small + 0.1 },
  );
  const room = asBuiltRoom(input.asBuilt);
  const x = box.x + half + 6;
  return [
    ...heading(box.x, box.y, '2. Where it comes out'),
    ...insideCut(facts.inside, cut, reading.units),
    ...words.items,
    text(box.x, box.y + box.height - 1.2, room, { size: SIZE.small }),
    ...heading(x, box.y, '3. Aim: first match this picture'),
    ...pictureBlock(picture, { x, y: box.y + HEAD, width: half, height: box.height - HEAD }),
  ];
}

const asBuiltRoom = ({ room }: Readonly<Record<string, string>>): string =>
  `Room where it comes out: ${room === undefined || room === '' ? '______________________' : room}`;

function pictureBlock(picture: CardPicture | null, box: PageBox): readonly PageItem[] {
  if (picture === null)
    return paragraphs(['The expected picture is not worked out. Aim by turn and tilt below.'], box, {
      ink: GREY,
    }).items;
  const names = paragraphs(
    picture.landmarks,
    { x: 0, y: 0, width: box.width },
    { size: SIZE.small, gap: 0.2 },
  );
  const high = Math.max(22, box.height - names.height - 2);
  const { items, frame } = drawnItems(picture.drawn, { ...box, height: high });
  const beside = box.width - frame.width;
  // A tall picture has room beside it, a wide one below.
  const at =
    beside > 36
      ? { x: frame.x + frame.width + 3, y: box.y, width: beside - 3 }
      : { x: box.x, y: box.y + frame.height + 1.6, width: box.width };
  return [...items, ...paragraphs(picture.landmarks, at, { size: SIZE.small, gap: 0.2 }).items];
}

/** Turn and tilt, and how the camera is set. */
function settingRow(input: CardInput, box: PageBox): readonly PageItem[] {
  const { facts, section, reading } = input;
  const half = (box.width - 6) / 2;
  const sketch = (half - 4) / 2;
  const foot = box.y + box.height - 3.4;
  const sketches: PageBox = { x: box.x, y: box.y + HEAD, width: sketch, height: foot - box.y - HEAD - 0.6 };
  const x = box.x + half + 6;
  const marks = isVarifocal(facts) ? markWords(facts, reading.units) : [];
  const rows = settingRows(facts, reading.units);
  const lines = paragraphs(marks, { x, y: 0, width: half }, { size: SIZE.small, gap: 0.3 });
  const markHead = marks.length > 0 ? 4.2 : 0;
  const pitch = Math.min(4.3, (box.height - HEAD - lines.height - markHead) / rows.length);
  const set = table(rows, { x, y: box.y + HEAD - 1, width: half }, pitch);
  const marksAt = box.y + HEAD + set.height + 0.6;
  return [
    ...heading(box.x, box.y, '4. Then turn and tilt, in whole degrees'),
    ...panSketch(facts, sketches),
    ...tiltSketch(facts, section, { ...sketches, x: box.x + sketch + 4 }, reading.units),
    text(box.x, foot + 2.4, 'From above, back to it', { size: SIZE.small, ink: GREY }),
    text(box.x + sketch + 4, foot + 2.4, 'From the side, not to scale', { size: SIZE.small, ink: GREY }),
    ...heading(x, box.y, '5. Set the camera'),
    ...set.items,
    ...(marks.length === 0
      ? []
      : [
          text(x, marksAt + 2.6, 'Lens, by two marks', { bold: true }),
          ...paragraphs(
            marks,
            { x, y: marksAt + markHead - 0.4, width: half },
            { size: SIZE.small, gap: 0.3 },
          ).items,
        ]),
  ];
}

function sentenceOf({ facts, title, reading }: CardInput): string {
  const rows = settingRows(facts, reading.units).map(([what, value]) => `${what}: ${value}.`);
  return [`Drill card of ${facts.set.name}, ${placeWords(facts)}.`, ...rows, title.edition].join(' ');
}
