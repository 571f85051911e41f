import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Assessment } from '../assess/assessment.ts';
import type { Editor } from '../editor/editor.ts';
import { Progress } from '../fittings/Progress.tsx';
import type { Plan } from '../plan/plan.ts';
import { ConditionsChoice } from './ConditionsChoice.tsx';
import { looksText } from './targetText.ts';
import styles from './titleBlock.module.css';

const TARGETS = {
  ground: 'Ground',
  plate: 'Plate',
  face: 'Face',
  height: 'Height',
  surface: 'Surface',
} as const;

/** What every number on the sheet rests on. */
export function TitleBlock({ editor, answers }: { editor: Editor; answers: AnswersStore }) {
  const plan = useStore(editor.store, (state) => state.plan);
  const asked = useStore(editor.store, (state) => state.target);
  const assessment = useStore(answers, (state) => state.assessment);
  const computing = useStore(answers, (state) => state.computing);
  const shaping = useStore(editor.store, (state) => state.gesturing);
  const waits = useStore(answers, ({ ahead }) => ahead !== null) && shaping;
  const target = assessment?.question.target ?? asked;
  return (
    <dl className={styles.block} aria-label="Title block">
      <div className={styles.whole}>
        <dt>Plan</dt>
        <dd>
          <b>{plan.name}</b>
        </dd>
      </div>
      <div className={styles.whole}>
        <dt>Coverage at</dt>
        <dd>
          {target.kind === 'surface'
            ? faceText(assessment, plan)
            : `${TARGETS[target.kind]}, ${target.height.toFixed(2)} m${looksText(target)}`}
        </dd>
      </div>
      <div className={styles.whole}>
        <dt>Conditions</dt>
        <dd>
          <ConditionsChoice editor={editor} />
        </dd>
      </div>
      <div>
        <dt>Cells</dt>
        <dd>{assessment ? `${assessment.site.grid.cell.toFixed(2)} m` : '–'}</dd>
      </div>
      <div>
        <dt>Bands</dt>
        <dd>{assessment?.edition.name ?? '–'}</dd>
      </div>
      {computing && (
        <div className={styles.whole}>
          <dt className={styles.spoken}>Working out</dt>
          <dd>
            {waits ? (
              computing.doing
            ) : (
              <Progress label="Coverage" share={computing.share} doing={computing.doing} />
            )}
          </dd>
        </div>
      )}
    </dl>
  );
}

/** "House, south wall" */
const faceText = (assessment: Assessment | null, { structures }: Plan): string => {
  const surface = assessment?.surface;
  if (!surface) return TARGETS.surface;
  const owner = structures[surface.owner]?.name;
  return owner === undefined ? surface.name : `${owner}, ${surface.name.toLowerCase()}`;
};
