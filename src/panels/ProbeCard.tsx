import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Assessment } from '../assess/assessment.ts';
import { fixed } from '../base/length.ts';
import { shortText, stateText } from './probeWords.ts';
import styles from './probeCard.module.css';

/** What is at the spot pointed at: the best camera's answer, then the others in short. */
export function ProbeCard({ answers }: { answers: AnswersStore }) {
  const probe = useStore(answers, (state) => state.probe);
  const assessment = useStore(answers, (state) => state.assessment);
  if (!probe || !assessment || probe.answers.length === 0) return null;
  const [best, ...others] = probe.answers;
  if (!best) return null;
  const [x, y] = probe.point;
  return (
    <section className={styles.card} aria-label="What is here">
      <p className={styles.best}>
        <b>{nameOf(assessment, best.camera)}</b> {stateText(assessment, best)}
      </p>
      <p className={styles.more}>
        {others
          .map((answer) => `${nameOf(assessment, answer.camera)}: ${shortText(assessment, answer)}`)
          .join('. ')}
        {others.length > 0 && '. '}
        {fixed(x, 2)} east, {fixed(y, 2)} north.
      </p>
    </section>
  );
}

const nameOf = ({ scene }: Assessment, id: string): string =>
  scene.cameras.find((camera) => camera.id === id)?.name ?? id;
