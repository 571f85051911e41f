import type { Assessment } from '../../assess/assessment.ts';
import { drillFacts } from '../../assess/card/drillFacts.ts';
import type { CautionReport } from '../../assess/cautions/caution.ts';
import { chosenLandmarks } from '../../assess/picture/landmarks.ts';
import { createPicturer } from '../../assess/picture/pictureOf.ts';
import type { Page } from '../../exchange/paper/page.ts';
import type { Plan } from '../../plan/plan.ts';
import { pictureDrawing } from '../picture/pictureDrawing.ts';
import { createShowSection } from '../section/shownSection.ts';
import { cardCautions } from './cardCautions.ts';
import { cardPage, type CardPicture } from './cardPage.ts';
import { noCardWords } from './cardWords.ts';
import { lackingOf } from './headBlock.ts';
import { planState } from './planState.ts';
import type { PaperName } from './sheets.ts';

/** How a card is printed. */
export interface CardAsked {
  readonly paper: PaperName;
  /** Heights also by courses of brick. */
  readonly courses: boolean;
  /** As it is to stand on the card: "25 November 2026". */
  readonly date: string;
  /** What there is to know before drilling; null: not worked out. */
  readonly report: CautionReport | null;
}

/** A card, and what keeps it from being drilled from, null where nothing does; or why there is none. */
export type Card =
  | { readonly page: Page; readonly lacking: string | null }
  | { readonly page: null; readonly why: string };

/** Makes cards; remembers what it laid out of the scene that is shown. */
export type CardMaker = (plan: Plan, assessment: Assessment, id: string, asked: CardAsked) => Card;

/** Landmarks to aim by. */
const LANDMARKS = 4;
/** The picture is drawn so wide, px: then its letters come out as large as the card's. */
const PICTURE_WIDTH = 420;

export function createCardMaker(): CardMaker {
  const showSection = createShowSection();
  const picturer = createPicturer();
  const pictureFor = (plan: Plan, assessment: Assessment, id: string): CardPicture | null => {
    const picture = picturer.picture(assessment, plan, id);
    if (picture === null) return null;
    const { scene, edition } = assessment;
    const named = { solids: scene.solids, edition, units: plan.settings.units };
    const landmarks = chosenLandmarks(picture.landmarks, LANDMARKS);
    const width = PICTURE_WIDTH * Math.min(1, (picture.width / picture.height) * 0.75);
    return {
      // Bands and what is hidden are the designer's; whoever aims needs edges.
      drawn: pictureDrawing({ ...picture, bands: [], hiding: [] }, named, { width, landmarks }),
      landmarks: landmarks.map(
        ({ name, left, top }, at) =>
          `${String.fromCharCode(97 + at)}  ${name}: ${Math.round(left)} % across, ${Math.round(top)} % down`,
      ),
    };
  };
  return (plan, assessment, id, { paper, courses, date, report }) => {
    const facts = drillFacts(plan, assessment.scene, id);
    if (typeof facts === 'string')
      return { page: null, why: noCardWords(facts, plan.cameras[id]?.name ?? id) };
    const { units } = plan.settings;
    const cautions = report === null ? null : cardCautions(report, units);
    const { situation } = assessment.scene;
    const at = plan.cameraOrder.indexOf(id);
    const page = cardPage({
      facts,
      section: showSection(assessment, plan, id, 4),
      title: {
        camera: facts.set.name,
        site: plan.name,
        number: `Card ${at + 1} of ${plan.cameraOrder.length}`,
        date,
        state: `plan ${planState(plan)}`,
        conditions: situation === null ? 'as drawn' : (plan.situations[situation]?.name ?? situation),
        edition: assessment.edition.name,
      },
      reading: { units, courses },
      paper,
      picture: pictureFor(plan, assessment, id),
      cautions,
      asBuilt: facts.set.card.asBuilt,
    });
    return { page, lacking: lackingOf(cautions) };
  };
}
