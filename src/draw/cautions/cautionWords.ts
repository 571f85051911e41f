import type { Caution, CautionReport, Lack, Severity } from '../../assess/cautions/caution.ts';
import type { Figures } from '../../assess/cautions/figures.ts';
import type { LengthUnit } from '../../base/length.ts';
import { askedWords, type Words, type WordsBy } from './askedWords.ts';
import { fixingWords } from './fixingWords.ts';
import { sayIn, sentence, type Say } from './say.ts';
import { viewWords } from './viewWords.ts';

const ALL: WordsBy<Figures> = { ...askedWords, ...viewWords, ...fixingWords };

// A table of functions by row is called with figures of its own row: `R` keeps the two together.
const wordsOf = <R extends Figures['row']>(
  row: R,
  figures: Extract<Figures, { readonly row: R }>,
  say: Say,
): Words => ALL[row](figures, say);

/** What a caution says, with its figure, and what to do, in the plan's units. */
export function cautionWords({ figures }: Pick<Caution, 'figures'>, units: LengthUnit): Words {
  const { said, advice } = wordsOf(figures.row, figures, sayIn(units));
  return { said: sentence(said), advice };
}

const SEVERITY: Readonly<Record<Severity, string>> = {
  stop: 'Look before you drill',
  fails: 'Cannot count',
  tight: 'Tight',
  tell: 'Good to know',
};

/** The same within a sentence, after a number. */
export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  stop: 'to look at before you drill',
  fails: 'that cannot count',
  tight: 'tight',
  tell: 'good to know',
};

export const severityWord = (severity: Severity): string => SEVERITY[severity];

/** How many cautions are said at once. */
const AT_ONCE = 5;

/** At most five, the worst first, but every stop; and the rest. */
export function shownFirst(cautions: readonly Caution[]): {
  readonly first: readonly Caution[];
  readonly rest: readonly Caution[];
} {
  const stops = cautions.filter(({ severity }) => severity === 'stop').length;
  const many = Math.max(stops, AT_ONCE);
  return { first: cautions.slice(0, many), rest: cautions.slice(many) };
}

/** The stops that nobody has ticked: until there are none, the drill card is not ready. */
export const notReady = ({ cautions }: Pick<CautionReport, 'cautions'>): readonly Caution[] =>
  cautions.filter(({ severity, ticked }) => severity === 'stop' && !ticked);

const LACKS: Readonly<Record<Lack, string>> = {
  requirements: 'what must be seen (faces, plates, smear, focus, clearances)',
  night: 'a night (glare, infrared, lamps)',
  origin: 'where the site lies on Earth (the sun)',
  boundary: 'the boundary (what is seen of neighbours)',
  housing: 'the housing (domes)',
  focus: 'the distance that the lens is focused on',
  imagesPerSecond: 'pictures a second',
  exposure: 'the exposure by day',
  floors: 'floors and ceilings (where the hole comes out)',
  thickness: 'the thickness of the wall',
  budget: 'the power budget',
};

/** What is not given, so that nothing could be said about it; null where all is. */
export const lacksWords = (lacks: readonly Lack[]): string | null =>
  lacks.length === 0
    ? null
    : `Not told, since it is not given: ${lacks.map((lack) => LACKS[lack]).join('; ')}.`;
