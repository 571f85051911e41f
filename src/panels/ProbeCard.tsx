import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Assessment } from '../assess/assessment.ts';
import { fixed } from '../base/length.ts';
import { figureText } from '../draw/figureText.ts';
import { shortText, sorted, stateText } from './probeWords.ts';
import styles from './probeCard.module.css';

/** What is at the spot pointed at: the best camera's answer, then what keeps the others from it. */
export function ProbeCard({ answers }: { answers: AnswersStore }) {
  const probe = useStore(answers, (state) => state.probe);
  const assessment = useStore(answers, (state) => state.assessment);
  if (!probe || !assessment || probe.answers.length === 0) return null;
  const { best, others, unframed } = sorted(probe.answers);
  const [x, y, z] = probe.point;
  const { surface } = assessment;
  const sentences = [
    ...others.map((answer) => `${nameOf(assessment, answer.camera)}: ${shortText(assessment, answer)}`),
    ...(unframed.length > 0
      ? [`Out of frame: ${unframed.map((id) => nameOf(assessment, id)).join(', ')}`]
      : []),
    `${fixed(x, 2)} east, ${fixed(y, 2)} north${surface === null ? '' : `, ${fixed(z, 2)} up`}`,
  ];
  return (
    <section className={styles.card} aria-label="What is here" data-answered>
      <p className={styles.best}>
        {best ? (
          <>
            <b>{nameOf(assessment, best.camera)}</b> {stateText(assessment, best, probe.point)}
          </>
        ) : (
          <b>No camera covers this spot</b>
        )}
      </p>
      {probe.figure && (
        <p className={styles.more}>
          {figureText(probe.figure, (answer) => shortText(assessment, { ...answer, before: null }))}.
        </p>
      )}
      <p className={styles.more}>{sentences.join('. ')}.</p>
    </section>
  );
}

const nameOf = ({ scene }: Assessment, id: string): string =>
  scene.cameras.find((camera) => camera.id === id)?.name ?? id;
