import type { DrillFacts } from '../../assess/card/drillFacts.ts';
import type { Section } from '../../assess/section/section.ts';
import type { Page, PageBox } from '../../exchange/paper/page.ts';
import { placeWords, settingRows } from './cardWords.ts';
import { cautionBlock, type CardCaution } from './cautionBlock.ts';
import { footBlock, FOOT } from './footBlock.ts';
import { headBlock, type CardTitle } from './headBlock.ts';
import { middleNeed, middleRow } from './middleRow.ts';
import { SIZE } from './pen.ts';
import type { Drawn } from './pictureItems.ts';
import { settingNeed, settingRow, type Need } from './settingRow.ts';
import { PAPER_MARGIN, paperOf, type PaperName } from './sheets.ts';
import type { Reading } from './tapedWords.ts';
import { whereBlock } from './whereBlock.ts';

/** The picture to be matched, with what its letters are and where they fall. */
export interface CardPicture {
  readonly drawn: Drawn;
  /** "a", "Front door, left jamb, foot" and "32 % across, 61 % down". */
  readonly landmarks: readonly { readonly letter: string; readonly name: string; readonly where: string }[];
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
/** Heights of the first row, mm; the others say themselves what they need. */
const WHERE: Need = { least: 58, best: 88 };

/** A camera's drill card as a page. */
export function cardPage(input: CardInput): Page {
  const { facts, title, paper } = input;
  const sheet = paperOf(paper);
  const x = PAPER_MARGIN;
  const width = sheet.width - 2 * PAPER_MARGIN;
  const head = headBlock(title, placeWords(facts, input.reading.units), input.cautions, {
    x,
    y: PAPER_MARGIN,
    width,
  });
  const top = PAPER_MARGIN + head.height + 2;
  const end = sheet.height - PAPER_MARGIN - FOOT;
  const room = end - top;
  const needs = { middle: middleNeed(input, width), setting: settingNeed(input, width) };
  const least = WHERE.least + needs.middle.least + needs.setting.least + 3 * GAP;
  const cautions = cautionsFor(input, width, room - least);
  const rows = shares(room - cautions.height - 3 * GAP, needs);
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
function cautionsFor({ cautions }: CardInput, width: number, most: number) {
  for (const size of [SIZE.body, 2.5, SIZE.small, 2.1, 1.9]) {
    const block = cautionBlock(cautions, width, size);
    if (block.height <= most) return block;
  }
  return cautionBlock(cautions, width, 1.9, most);
}

/** What is left is shared out, each row at most at its best; what then remains goes to the elevation. */
function shares(
  room: number,
  { middle, setting }: Readonly<Record<'middle' | 'setting', Need>>,
): Readonly<Record<'where' | 'middle' | 'setting', number>> {
  const all = [WHERE, middle, setting];
  const spare = all.reduce((left, { least }) => left - least, room);
  const wish = all.reduce((sum, { least, best }) => sum + best - least, 0);
  const share = Math.max(0, Math.min(1, spare / wish));
  const high = ({ least, best }: Need): number => least + share * (best - least);
  const rest = room - high(middle) - high(setting);
  return { where: Math.max(WHERE.least, rest), middle: high(middle), setting: high(setting) };
}

function sentenceOf({ facts, title, reading }: CardInput): string {
  const rows = settingRows(facts, reading.units).map(([what, value]) => `${what}: ${value}.`);
  return [
    `Drill card of ${facts.set.name}, ${placeWords(facts, reading.units)}.`,
    ...rows,
    title.edition,
  ].join(' ');
}
