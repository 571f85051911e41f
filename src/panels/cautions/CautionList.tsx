import { useState } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import { SEVERITY_WORDS, lacksWords, notReady, shownFirst } from '../../draw/cautions/cautionWords.ts';
import type { CautionReport } from '../../assess/cautions/caution.ts';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import type { PlanCamera } from '../../plan/plan.ts';
import { Group } from '../Group.tsx';
import { CautionRow } from './CautionRow.tsx';
import { useCautions } from './useCautions.ts';
import sheet from '../sheet.module.css';
import styles from './cautions.module.css';

interface CautionListProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly camera: PlanCamera;
}

/** What to mind about a camera, worst first: at most five, but every stop, and the rest one press away. */
export function CautionList({ editor, answers, camera }: CautionListProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const { report, stale, looked } = useCautions(editor, camera);
  const [all, setAll] = useState(false);
  if (report === null)
    return (
      <Group title="Cautions">
        <p className={sheet.note}>
          {looked && !stale
            ? 'This camera is fixed to nothing that stands, so nothing can be said about it.'
            : 'Looking for cautions.'}
        </p>
      </Group>
    );
  const { first, rest } = shownFirst(report.cautions);
  const lacking = lacksWords(report.lacks);
  return (
    <Group title="Cautions">
      <div aria-busy={stale} data-cautions={stale ? 'looking' : report.cautions.length}>
        <p className={styles.sum} role="status">
          {stale ? 'Looking again.' : sumWords(report)}
        </p>
        <ul className={styles.list}>
          {(all ? report.cautions : first).map((caution) => (
            <CautionRow
              key={caution.id}
              editor={editor}
              answers={answers}
              plan={plan}
              camera={camera}
              caution={caution}
            />
          ))}
        </ul>
        {rest.length > 0 && (
          <Button press={() => setAll(!all)}>
            {all ? 'Show the first only' : `Show the rest (${rest.length})`}
          </Button>
        )}
        {lacking !== null && <p className={sheet.note}>{lacking}</p>}
        <p className={sheet.note}>That something is not named here does not make it safe.</p>
      </div>
    </Group>
  );
}

/** "2 to look at before you drill, 3 tight, 4 good to know." */
function sumWords(report: CautionReport): string {
  if (report.cautions.length === 0) return 'Nothing found in the plan.';
  const waiting = notReady(report).length;
  const parts = (['stop', 'fails', 'tight', 'tell'] as const).flatMap((severity) => {
    const many = report.cautions.filter((one) => one.severity === severity).length;
    return many === 0 ? [] : [`${many} ${SEVERITY_WORDS[severity]}`];
  });
  return `${parts.join(', ')}.${waiting > 0 ? ` The drill card is not ready: ${waiting} not looked at.` : ''}`;
}
