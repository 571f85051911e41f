import { useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import type { TrialAnswers } from '../../answers/trial.ts';
import type { Area } from '../../coverage/area.ts';
import type { Edition } from '../../coverage/band.ts';
import { createShowTrial } from '../../draw/trial/shownTrial.ts';
import type { Editor } from '../../editor/editor.ts';
import { letterOf, rightOf, variantsIn, type TrialStore } from '../../editor/trial/trial.ts';
import { CameraChoice } from './CameraChoice.tsx';
import { TrialCurves } from './TrialCurves.tsx';
import { TrialSheet } from './TrialSheet.tsx';
import { sideWords } from './sideWords.ts';
import { Wipe } from './Wipe.tsx';
import { areaText } from '../areaText.ts';
import { askedText } from '../targetText.ts';
import { TargetChoice } from '../TargetChoice.tsx';
import { NoticePlate } from '../NoticePlate.tsx';
import { DensityScale } from '../DensityScale.tsx';
import styles from './trial.module.css';

export interface LensTrialProps {
  /** Of the plan itself: what is kept is a step there. */
  readonly editor: Editor;
  /** Of the plan with the variants in it. */
  readonly inTrial: Editor;
  readonly trial: TrialStore;
  /** The assessment of the plan with the variants. */
  readonly answers: AnswersStore;
  readonly changes: TrialAnswers;
  /** The Model, painted in two halves. */
  readonly view: ReactNode;
  toModel(): void;
}

/** Two settings of a camera on one spot, or more: one picture with a divider, ground gained and lost, numbers, curves. */
export function LensTrial({ editor, inTrial, trial, answers, changes, view, toModel }: LensTrialProps) {
  const plan = useStore(inTrial.store, (state) => state.plan);
  const assessment = useStore(answers, (state) => state.assessment);
  const state = useStore(trial);
  const [show] = useState(createShowTrial);
  const { of } = state;
  const camera = of === null ? undefined : plan.cameras[of];
  const variants = useMemo(() => variantsIn(state), [state]);
  const settings = useMemo(
    () =>
      assessment === null || of === null
        ? []
        : show(assessment, plan, [
            { id: of, letter: 'A' },
            ...variants.map(({ id }) => ({ id, letter: letterOf(id) })),
          ]),
    [show, assessment, plan, of, variants],
  );
  if (camera === undefined) return <CameraChoice editor={editor} toModel={toModel} />;
  const right = settings.find(({ id }) => id === rightOf(state));
  const [standing] = settings;
  return (
    <div className={styles.page}>
      <div className={styles.view}>
        <div className={styles.over} data-over>
          <TargetChoice editor={editor} />
          {right && state.marked && assessment && (
            <Legend changes={changes} edition={assessment.edition} band={state.band} right={right.id} />
          )}
        </div>
        <div className={styles.picture}>
          {view}
          {standing && right && (
            <Wipe
              trial={trial}
              left={{ letter: standing.letter, words: sideWords(standing, right) }}
              right={{ letter: right.letter, words: sideWords(right, standing) }}
            />
          )}
          <div className={styles.notices} data-over>
            <NoticePlate editor={editor} />
          </div>
        </div>
        <div className={styles.scale} data-over>
          <DensityScale answers={answers} />
        </div>
      </div>
      <TrialSheet {...{ editor, inTrial, trial, answers, changes, plan, camera, settings, assessment }} />
      <div className={styles.below}>
        {assessment && settings.length > 0 && (
          <TrialCurves
            settings={settings}
            edition={assessment.edition}
            plan={plan}
            distance={state.distance}
            asked={askedText(assessment, plan)}
            setDistance={(distance) => trial.setState({ distance })}
          />
        )}
      </div>
    </div>
  );
}

interface LegendProps {
  readonly changes: TrialAnswers;
  readonly edition: Edition;
  readonly band: number;
  readonly right: string;
}

/** What + and − mean on the ground right of the divider, and how much there is of either. */
function Legend({ changes, edition, band, right }: LegendProps) {
  const change = useStore(changes, (state) => state.changes[right]?.byBand[band]);
  const text = (area: Area | undefined): string => (area === undefined ? '' : ` ${areaText(area)}`);
  return (
    <p className={styles.legend}>
      <b>+</b> gained{text(change?.gained)} <b>−</b> lost{text(change?.lost)}, enough to{' '}
      {(edition.bands[band]?.name ?? '').toLowerCase()}
    </p>
  );
}
