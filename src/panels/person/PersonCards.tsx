import { useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import type { Assessment } from '../../assess/assessment.ts';
import { createShowPerson, personNamed, lookOf } from '../../draw/person/shownPerson.ts';
import { exposureWords } from '../../draw/person/personWords.ts';
import type { Editor } from '../../editor/editor.ts';
import { standingAt } from '../../editor/standingAt.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { PersonCard } from './PersonCard.tsx';
import { FIRST_CHOICE, looksOf, type PersonChoice } from './personChoice.ts';
import { PersonControls } from './PersonControls.tsx';
import { cardsOf } from './lenses.ts';
import styles from './person.module.css';

interface PersonCardsProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  /** What stands at the end of its head. */
  readonly beside?: ReactNode;
}

/** What a face, a plate and a parcel would be made of where somebody stands, by the selected camera. */
export function PersonCards({ editor, answers, beside }: PersonCardsProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const selected = useStore(editor.store, (state) => state.selected);
  const assessment = useStore(answers, (state) => state.assessment);
  const camera = selected?.kind === 'camera' ? plan.cameras[selected.id] : undefined;
  if (camera === undefined || assessment === null)
    return <Empty about={camera === undefined ? emptyWords(plan) : 'Working out coverage.'} />;
  return <CardsOf key={camera.id} {...{ editor, plan, camera, assessment, beside }} />;
}

const emptyWords = ({ cameraOrder }: Plan): string =>
  `${cameraOrder.length === 0 ? 'Place' : 'Select'} a camera to see what a face, a plate and a parcel would be made of in its picture.`;

function Empty({ about }: { about: string }) {
  return (
    <section className={styles.strip} aria-label="The person at true pixels">
      <Head about={about} />
    </section>
  );
}

function Head({ about, beside }: { about: string; beside?: ReactNode }) {
  return (
    <div className={styles.head}>
      <h2 className={styles.title}>The person at true pixels</h2>
      <span className={styles.about}>{about}</span>
      {beside}
    </div>
  );
}

interface CardsOfProps {
  readonly editor: Editor;
  readonly plan: Plan;
  readonly camera: PlanCamera;
  readonly assessment: Assessment;
  readonly beside: ReactNode;
}

function CardsOf({ editor, plan, camera, assessment, beside }: CardsOfProps) {
  const [show] = useState(createShowPerson);
  const [choice, setChoice] = useState<PersonChoice>(FIRST_CHOICE);
  const standing = useStore(editor.store, (state) => state.standing);
  const gesturing = useStore(editor.store, (state) => state.gesturing);
  const { target } = assessment.question;
  const own = assessment.scene.cameras.find(({ id }) => id === camera.id);
  const shown = useMemo(() => {
    if (own === undefined) return null;
    const at = standingAt(standing, own);
    const looks = looksOf(choice, target, own.eye);
    const here = show(assessment, plan, { camera: camera.id, at, looks, lens: null });
    if (here === null) return null;
    const seenOn = { looks, cap: choice.cap, moving: choice.moving };
    const cards = cardsOf(choice, plan, camera, here, assessment.edition).flatMap((card) => {
      const seen =
        card.key === 'here'
          ? here
          : show(assessment, plan, { camera: card.camera.id, at, looks, lens: card.lens });
      return seen === null ? [] : [{ ...card, seen, look: lookOf(plan, card.camera, seenOn) }];
    });
    return { look: lookOf(plan, camera, seenOn), cards };
  }, [show, assessment, plan, camera, own, standing, choice, target]);
  const named = useMemo(() => personNamed(assessment, plan), [assessment, plan]);
  if (shown === null)
    return <Empty about={`${camera.name} is fixed to nothing that stands here, so it has no picture.`} />;
  return (
    <section className={styles.strip} aria-label="The person at true pixels">
      <Head about="drawn by us, not a photograph" beside={beside} />
      <PersonControls {...{ editor, plan, camera, target, standing, choice, set: setChoice }} />
      <div className={styles.cards}>
        {shown.cards.map(({ key, title, seen, look }) => (
          <PersonCard key={key} {...{ title, seen, named, look, isHere: key === 'here', busy: gesturing }} />
        ))}
      </div>
      <p className={styles.foot}>
        {camera.exposure === null &&
          `Exposure is not stated and counts as ${exposureWords(shown.look.exposure.day)} by day and ${exposureWords(shown.look.exposure.night)} at night. `}
        Pixels and angles are exact; grain and brightness at night are common practice, no source. Bands:{' '}
        {assessment.edition.name}. Enough pixels are no promise: weather, focus and compression are not in it.
      </p>
    </section>
  );
}
