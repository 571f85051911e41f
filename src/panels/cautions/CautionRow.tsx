import { useEffect, useId, useRef, useState } from 'react';
import type { AnswersStore } from '../../answers/store.ts';
import type { Caution } from '../../assess/cautions/caution.ts';
import { distance, type Vec3 } from '../../base/vector.ts';
import { cautionWords } from '../../draw/cautions/cautionWords.ts';
import { statusWords } from '../../draw/cautions/status.ts';
import { shownThreshold } from '../../draw/cautions/thresholdWords.ts';
import type { Editor } from '../../editor/editor.ts';
import { markPlaces, tick } from '../../editor/settings/cautionActs.ts';
import { Check } from '../../fittings/Check.tsx';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { LimitField } from './LimitField.tsx';
import { SeverityMark } from './SeverityMark.tsx';
import styles from './cautions.module.css';

/** A place nearer to the lens than this is the camera itself, m. */
const AT_LENS = 0.05;

interface CautionRowProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly plan: Plan;
  readonly camera: PlanCamera;
  readonly caution: Caution;
}

/** One caution: how grave, what is, what to do, where; and on asking why, and by which limit. */
export function CautionRow({ editor, answers, plan, camera, caution }: CautionRowProps) {
  const [asked, setAsked] = useState(false);
  const [marked, setMarked] = useState(false);
  const unmark = useRef<(() => void) | null>(null);
  const more = useId();
  useEffect(() => () => unmark.current?.(), []);
  const { said, advice } = cautionWords(caution, plan.settings.units);
  const show = () => {
    unmark.current?.();
    unmark.current = null;
    if (marked) return setMarked(false);
    const eye = eyeOf(answers, camera.id);
    if (eye === null) return editor.say('Coverage is being worked out: try again in a moment.');
    const far = caution.places.map(({ at }) => at).filter((at) => distance(eye, at) > AT_LENS);
    unmark.current = markPlaces(editor, eye, far);
    setMarked(true);
    editor.say(far.length > 0 ? `Marked in the Model: ${said}` : `It is about the camera itself. ${said}`);
  };
  return (
    <li className={styles.caution} data-severity={caution.severity}>
      <SeverityMark severity={caution.severity} />
      <p className={styles.said}>{said}</p>
      <p className={styles.advice}>{advice}</p>
      {caution.severity === 'stop' && (
        <Check
          label="I have looked"
          checked={caution.ticked}
          set={(looked) => tick(editor, camera, caution.id, looked)}
        />
      )}
      <div className={styles.acts}>
        <button type="button" className={styles.press} aria-pressed={marked} onClick={show}>
          {marked ? 'Take the mark away' : 'Show in the Model'}
        </button>
        <button
          type="button"
          className={styles.press}
          aria-expanded={asked}
          aria-controls={more}
          onClick={() => setAsked(!asked)}
        >
          {caution.thresholds.length > 0 ? 'Source and limit' : 'Source'}
        </button>
      </div>
      <div id={more} hidden={!asked} className={styles.more}>
        <p>
          Source: {statusWords(caution.row)}.{inWords(plan, caution)}
        </p>
        {caution.thresholds.map((id) => (
          <LimitField
            key={id}
            editor={editor}
            limit={shownThreshold(plan.settings, id)}
            units={plan.settings.units}
          />
        ))}
      </div>
    </li>
  );
}

function eyeOf(answers: AnswersStore, id: string): Vec3 | null {
  const { assessment } = answers.getState();
  return assessment?.scene.cameras.find((one) => one.id === id)?.eye ?? null;
}

const inWords = (plan: Plan, { situations }: Caution): string =>
  situations.length === 0
    ? ''
    : ` In these conditions: ${situations.map((id) => plan.situations[id]?.name ?? 'As drawn').join(', ')}.`;
