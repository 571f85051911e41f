import { useState } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import type { Card } from '../../draw/card/cardOf.ts';
import type { PaperName } from '../../draw/card/sheets.ts';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import { Check } from '../../fittings/Check.tsx';
import { Segmented } from '../../fittings/Segmented.tsx';
import { UnwritableProvider } from '../../fittings/writable.ts';
import { AsBuilt } from './AsBuilt.tsx';
import { CardActs } from './CardActs.tsx';
import { PageShown } from './PageShown.tsx';
import type { PaperPort } from './paperPort.ts';
import { Stops } from './Stops.tsx';
import { useCards } from './useCards.ts';
import styles from './card.module.css';

interface DrillCardsProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly paper: PaperPort;
}

const PAPERS: readonly { readonly value: PaperName; readonly label: string }[] = [
  { value: 'a4', label: 'A4' },
  { value: 'letter', label: 'Letter' },
];

const today = (): string => new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' }).format(new Date());

/** A printable card a camera: where to drill, what to look at first, how to aim and set. */
export function DrillCards({ editor, answers, paper }: DrillCardsProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const revision = useStore(editor.store, (state) => state.revision);
  const selected = useStore(editor.store, (state) => state.selected);
  const readOnly = useStore(editor.store, (state) => state.readOnly);
  const assessment = useStore(answers, (state) => state.assessment);
  const [size, setSize] = useState<PaperName>('a4');
  const [courses, setCourses] = useState(false);
  const [large, setLarge] = useState(false);
  const [date] = useState(today);
  const shown = selected?.kind === 'camera' ? selected.id : (plan.cameraOrder[0] ?? null);
  const { cards, working } = useCards(
    plan,
    // An answer to an older plan would draw its wall with this one's camera.
    assessment?.revision === revision ? assessment : null,
    shown,
    { paper: size, courses, date },
  );
  const camera = shown === null ? undefined : plan.cameras[shown];
  if (shown === null || camera === undefined)
    return (
      <section className={styles.cards} data-empty aria-label="Drill cards">
        <h2 className={styles.title}>Drill cards</h2>
        <p className={styles.note}>
          No camera yet. Fix one to a wall, a soffit or a post: its card then says where to drill, what to
          look at first, and how to aim it.
        </p>
      </section>
    );
  const card = cards.get(shown);
  return (
    <UnwritableProvider value={readOnly ? 'This plan is edited in another tab.' : null}>
      <section className={styles.cards} aria-label="Drill cards" data-working={working}>
        <div className={styles.side}>
          <h2 className={styles.title}>Drill cards</h2>
          <ul className={styles.list}>
            {plan.cameraOrder.map((id) => (
              <li key={id}>
                <button
                  type="button"
                  className={styles.row}
                  aria-current={id === shown}
                  onClick={() => editor.select({ kind: 'camera', id })}
                >
                  <b>{plan.cameras[id]?.name ?? id}</b>
                  <Standing card={cards.get(id)} />
                </button>
              </li>
            ))}
          </ul>
          <div className={styles.group}>
            <Segmented label="Paper" value={size} choices={PAPERS} viewing set={(value) => setSize(value)} />
            <UnwritableProvider value={null}>
              <Check label="Heights in brick courses too" checked={courses} set={setCourses} />
            </UnwritableProvider>
          </div>
          <CardActs {...{ editor, plan, paper, cards, shown, working }} />
        </div>
        <div className={styles.preview} data-large={large}>
          {card === undefined ? (
            <p className={styles.note}>Drawing the card of {camera.name}.</p>
          ) : card.page === null ? (
            <p className={styles.note}>{card.why}</p>
          ) : (
            <>
              <div className={styles.zoom}>
                <Button look="quiet" pressed={large} press={() => setLarge(!large)}>
                  Larger
                </Button>
              </div>
              <PageShown page={card.page} className={styles.page} />
            </>
          )}
        </div>
        <div className={styles.side}>
          <Stops editor={editor} camera={camera} card={card} />
          <AsBuilt key={camera.id} editor={editor} camera={camera} />
        </div>
      </section>
    </UnwritableProvider>
  );
}

/** Whether a card may be drilled from, in a few words. */
function Standing({ card }: { card: Card | undefined }) {
  if (card === undefined) return <span className={styles.standing}>being drawn</span>;
  if (card.page === null) return <span className={styles.standing}>no card</span>;
  return card.lacking === null ? (
    <span className={styles.standing}>ready</span>
  ) : (
    <span className={styles.standing} data-open>
      not ready
    </span>
  );
}
