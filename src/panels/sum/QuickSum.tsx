import { useMemo, useState } from 'react';
import { X } from 'lucide-react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import type { Section } from '../../assess/section/section.ts';
import { solved } from '../../draw/sum/solved.ts';
import { sectionOfSum, sumNamed, sumSheet } from '../../draw/sum/sumSheet.ts';
import { sumGist, sumNotes, sumRows, sumText, SUM_CAUTION, type SumNamed } from '../../draw/sum/sumWords.ts';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import { UnwritableProvider } from '../../fittings/writable.ts';
import type { Sum } from '../../optics/quickSum.ts';
import { copyPicture, copyText } from './copySum.ts';
import { firstSum, sumOfSelected, type SumChoice } from './sumChoice.ts';
import { SumDrawing } from './SumDrawing.tsx';
import { SumFields } from './SumFields.tsx';
import styles from './sum.module.css';

interface QuickSumProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  close(): void;
}

/** The Section with no house: height, lens and distance give pixels, width and angles, or one of them is found. */
export function QuickSum({ editor, answers, close }: QuickSumProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const named = useMemo(() => sumNamed(plan), [plan]);
  const [choice, setChoice] = useState<SumChoice>(
    () => sumOfSelected(editor.store.getState(), answers.getState().assessment) ?? firstSum(plan.settings),
  );
  const found = useMemo(() => solved(choice.asked, choice.unknown, choice.wanted), [choice]);
  const sum = found.ok ? found.sum : null;
  const section = useMemo(() => (sum === null ? null : sectionOfSum(sum, named)), [sum, named]);
  return (
    <UnwritableProvider value={null}>
      <section className={styles.page} aria-label="Quick sum">
        <header className={styles.head}>
          <h2 className={styles.title}>Quick sum</h2>
          <p className={styles.about}>
            {choice.from === null
              ? 'One camera, flat ground, no house.'
              : `Begun from ${choice.from}; the plan stays as it is.`}
          </p>
          <Button look="icon" label="Close the quick sum" press={close}>
            <X size={18} aria-hidden="true" />
          </Button>
        </header>
        {section === null || sum === null ? (
          <p className={styles.trouble} role="alert">
            {found.ok ? '' : found.words}
          </p>
        ) : (
          <SumDrawing
            section={section}
            named={named}
            set={({ distance, ...rest }) =>
              setChoice({
                ...choice,
                // Whoever drags the person gives the distance.
                unknown: distance !== undefined && choice.unknown === 'distance' ? 'density' : choice.unknown,
                asked: {
                  ...(sum?.asked ?? choice.asked),
                  ...rest,
                  ...(distance === undefined ? {} : { distance }),
                },
              })
            }
          />
        )}
        {sum !== null && <p className={styles.gist}>{sumGist(sum, named)}</p>}
        <div className={styles.body}>
          <SumFields
            choice={choice}
            sum={sum}
            settings={plan.settings}
            bands={named.edition.bands}
            set={setChoice}
          />
          {sum !== null && section !== null && <Answers {...{ sum, section, named }} />}
        </div>
        {sum !== null && section !== null && <Copies {...{ sum, section, named }} />}
      </section>
    </UnwritableProvider>
  );
}

interface AnswersProps {
  readonly sum: Sum;
  readonly section: Section;
  readonly named: SumNamed;
}

/** The answers, and what is to be known about them. */
function Answers({ sum, section, named }: AnswersProps) {
  return (
    <div className={styles.answers}>
      <dl className={styles.rows} aria-label="Answers">
        {sumRows(sum, section, named).map(({ name, value, note }) => (
          <div key={name} className={styles.answer}>
            <dt>
              {name}
              {note !== null && <span className={styles.note}> {note}</span>}
            </dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {sumNotes(sum).map((note) => (
        <p key={note} className={styles.hint}>
          {note}
        </p>
      ))}
      <p className={styles.hint}>
        Bands: {named.edition.name}. {SUM_CAUTION}
      </p>
    </div>
  );
}

/** Copies of the sum; always at hand at the foot of the page. */
function Copies({ sum, section, named }: AnswersProps) {
  const [said, setSaid] = useState('');
  const [shown, setShown] = useState<string | null>(null);
  const text = () => sumText(sum, section, named);
  return (
    <footer className={styles.foot}>
      <div className={styles.copies}>
        <Button
          look="main"
          press={() => {
            void copyPicture(sumSheet(sum, section, named)).then(setSaid);
          }}
        >
          Copy picture
        </Button>
        <Button
          press={() => {
            void copyText(text()).then((copied) => {
              setSaid(copied ?? 'The browser keeps the clipboard from this page. Mark the text below.');
              setShown(copied === null ? text() : null);
            });
          }}
        >
          Copy text
        </Button>
        <p className={styles.said} role="status">
          {said}
        </p>
      </div>
      {shown !== null && (
        <textarea
          className={styles.text}
          readOnly
          aria-label="The sum as text"
          rows={4}
          value={shown}
          onFocus={(event) => event.currentTarget.select()}
        />
      )}
    </footer>
  );
}
