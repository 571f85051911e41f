import { lazy, Suspense, useState } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import type { TrialAnswers } from '../../answers/trial.ts';
import type { Assessment } from '../../assess/assessment.ts';
import type { TrialSetting } from '../../draw/trial/shownTrial.ts';
import type { Editor } from '../../editor/editor.ts';
import { letterOf, rightOf, type TrialStore } from '../../editor/trial/trial.ts';
import { keepStanding, keepVariant } from '../../editor/trial/trialActs.ts';
import { Button } from '../../fittings/Button.tsx';
import { Segmented } from '../../fittings/Segmented.tsx';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { SheetHead } from '../SheetHead.tsx';
import { SettingChips } from './SettingChips.tsx';
import { TrialNumbers } from './TrialNumbers.tsx';
import styles from './trialSheet.module.css';

const CameraSheet = lazy(() =>
  import('../camera/CameraSheet.tsx').then((loaded) => ({ default: loaded.CameraSheet })),
);

interface TrialSheetProps {
  readonly editor: Editor;
  readonly inTrial: Editor;
  readonly trial: TrialStore;
  readonly answers: AnswersStore;
  readonly changes: TrialAnswers;
  readonly plan: Plan;
  /** As it stands. */
  readonly camera: PlanCamera;
  readonly settings: readonly TrialSetting[];
  readonly assessment: Assessment | null;
}

type Part = 'compare' | 'set';

/** Beside the picture: the settings compared, their numbers, and the fields of the one in hand. */
export function TrialSheet(props: TrialSheetProps) {
  const { editor, inTrial, trial, answers, changes, plan, camera, settings, assessment } = props;
  const [part, setPart] = useState<Part>('compare');
  const state = useStore(trial);
  const right = rightOf(state);
  const inHand = plan.cameras[state.chosen ?? camera.id] ?? camera;
  return (
    <aside className={styles.sheet} aria-label="Settings compared">
      <SheetHead sign={null} title={`Lens trial at ${camera.name}`} kind="Same spot" />
      <SettingChips {...{ editor, trial, camera, plan }} />
      <div className={styles.parts}>
        <Segmented<Part>
          label="What is shown beside the picture"
          viewing
          value={part}
          choices={[
            { value: 'compare', label: 'Compare' },
            { value: 'set', label: `Set ${letterOf(inHand.id)}` },
          ]}
          set={setPart}
        />
      </div>
      <div className={styles.body}>
        {part === 'set' ? (
          <Suspense fallback={null}>
            <CameraSheet key={inHand.id} editor={inTrial} answers={answers} plan={plan} camera={inHand} />
          </Suspense>
        ) : (
          <TrialNumbers {...{ trial, changes, plan, settings, assessment, right }} />
        )}
      </div>
      {right !== null && (
        <div className={styles.keep}>
          <Button press={() => keepStanding(editor, trial)}>Keep A</Button>
          <Button look="main" press={() => keepVariant(editor, trial, right)}>
            Keep {letterOf(right)}
          </Button>
        </div>
      )}
    </aside>
  );
}
