import type { Assessment } from '../../assess/assessment.ts';
import { drillFacts, type DrillFacts, type NoCard } from '../../assess/card/drillFacts.ts';
import type { CautionReport } from '../../assess/cautions/caution.ts';
import { createCautioner } from '../../assess/cautions/cautioner.ts';
import { chosenLandmarks } from '../../assess/picture/landmarks.ts';
import type { Picture } from '../../assess/picture/picture.ts';
import { createPicturer } from '../../assess/picture/pictureOf.ts';
import type { Section } from '../../assess/section/section.ts';
import type { Step } from '../../assess/step.ts';
import type { Page } from '../../exchange/paper/page.ts';
import type { Plan } from '../../plan/plan.ts';
import { pictureDrawing } from '../picture/pictureDrawing.ts';
import { createShowSection } from '../section/shownSection.ts';
import { cardCautions } from './cardCautions.ts';
import { cardPage, type CardPicture } from './cardPage.ts';
import { noCardWords } from './cardWords.ts';
import type { CardCaution } from './cautionBlock.ts';
import { lackingOf } from './headBlock.ts';
import { planState, withoutNotes } from './planState.ts';
import type { PaperName } from './sheets.ts';

/** How a card is printed. */
export interface CardAsked {
  readonly paper: PaperName;
  /** Heights also by courses of brick. */
  readonly courses: boolean;
  /** As it is to stand on the card: "25 November 2026". */
  readonly date: string;
}

/** A card; or why there is none. */
export type Card =
  | {
      readonly page: Page;
      /** What keeps it from being drilled from; null: nothing. */
      readonly lacking: string | null;
      /** What stands on it to be looked at first, in its order. */
      readonly stops: readonly CardCaution[];
    }
  | { readonly page: null; readonly why: string };

/** Makes cards. What was worked out of a plan is remembered until something changes that is no note on a card. */
export interface CardMaker {
  /** A card in steps, between which the window may do something else. */
  steps(plan: Plan, assessment: Assessment, id: string, asked: CardAsked): Generator<Step, Card, void>;
}

/** Landmarks to aim by. */
const LANDMARKS = 4;
/** The picture is drawn so wide, px: then its letters come out as large as the card's. */
const PICTURE_WIDTH = 420;
/** Where the section's person stands does not matter here, m. */
const ANYWHERE = 4;

interface Found {
  readonly facts: DrillFacts;
  readonly section: Section | null;
  readonly picture: CardPicture | null;
  readonly report: CautionReport | null;
}

interface Kept {
  readonly plan: Plan;
  readonly situation: string | null;
  readonly cameras: readonly { readonly id: string }[];
  readonly found: Map<string, Found | NoCard>;
  state: string | null;
}

export function createCardMaker(): CardMaker {
  const showSection = createShowSection();
  const picturer = createPicturer();
  const cautioner = createCautioner();
  const bare = withoutNotes();
  let kept: Kept | null = null;

  const keptFor = (plan: Plan, { scene, cameras }: Assessment): Kept => {
    const shown = cameras.map(({ camera }) => camera);
    const isSame =
      kept?.plan === plan &&
      kept.situation === scene.situation &&
      kept.cameras.length === shown.length &&
      kept.cameras.every(({ id }, at) => id === shown[at]?.id);
    if (kept === null || !isSame)
      kept = { plan, situation: scene.situation, cameras: shown, found: new Map(), state: null };
    return kept;
  };

  function* find(plan: Plan, assessment: Assessment, id: string): Generator<Step, Found | NoCard, void> {
    const facts = drillFacts(plan, assessment.scene, id);
    if (typeof facts === 'string') return facts;
    yield { share: 0.1, doing: 'Drawing the card' };
    const report = yield* cautioner.steps(plan, id);
    const job = picturer.steps(assessment, plan, id);
    let made = job.next();
    while (made.done !== true) {
      yield { share: 0.8, doing: 'Drawing the picture' };
      made = job.next();
    }
    return {
      facts,
      section: showSection(assessment, plan, id, ANYWHERE),
      picture: made.value === null ? null : cardPicture(made.value, assessment, plan),
      report,
    };
  }

  return {
    *steps(plan, assessment, id, { paper, courses, date }) {
      const own = keptFor(bare(plan), assessment);
      const known = own.found.get(id) ?? (yield* find(own.plan, assessment, id));
      own.found.set(id, known);
      const set = plan.cameras[id];
      if (typeof known === 'string' || set === undefined)
        return { page: null, why: noCardWords(typeof known === 'string' ? known : 'lost', set?.name ?? id) };
      own.state ??= planState(own.plan);
      const { units } = plan.settings;
      const { ticked, asBuilt } = set.card;
      const cautions =
        known.report === null
          ? null
          : cardCautions(known.report, units).map((one) => ({ ...one, ticked: ticked.includes(one.id) }));
      const { situation } = assessment.scene;
      const page = cardPage({
        ...known,
        cautions,
        title: {
          camera: set.name,
          site: plan.name,
          number: `Card ${plan.cameraOrder.indexOf(id) + 1} of ${plan.cameraOrder.length}`,
          date,
          state: `plan ${own.state}`,
          conditions: situation === null ? 'as drawn' : (plan.situations[situation]?.name ?? situation),
          edition: assessment.edition.name,
        },
        reading: { units, courses },
        paper,
        asBuilt,
      });
      return { page, lacking: lackingOf(cautions), stops: (cautions ?? []).filter(({ isStop }) => isStop) };
    },
  };
}

function cardPicture(picture: Picture, { scene, edition }: Assessment, plan: Plan): CardPicture {
  const landmarks = chosenLandmarks(picture.landmarks, LANDMARKS);
  const named = { solids: scene.solids, edition, units: plan.settings.units };
  const width = PICTURE_WIDTH * Math.min(1, (picture.width / picture.height) * 0.75);
  return {
    // Bands and what is hidden are the designer's; whoever aims needs edges.
    drawn: pictureDrawing({ ...picture, bands: [], hiding: [] }, named, { width, landmarks }),
    landmarks: landmarks.map(({ name, left, top }, at) => ({
      letter: String.fromCharCode(97 + at),
      name,
      where: `${Math.round(left)} % across, ${Math.round(top)} % down`,
    })),
  };
}
