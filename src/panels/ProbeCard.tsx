import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { PointAnswer } from '../assess/assessment.ts';
import type { Assessment } from '../assess/assessment.ts';
import { fixed } from '../base/length.ts';
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
        {others.map((answer) => `${nameOf(assessment, answer.camera)}: ${shortText(assessment, answer)}`).join('. ')}
        {others.length > 0 && '. '}
        {fixed(x, 2)} east, {fixed(y, 2)} north.
      </p>
    </section>
  );
}

const nameOf = ({ scene }: Assessment, id: string): string =>
  scene.cameras.find((camera) => camera.id === id)?.name ?? id;

/** "recognise, 131 px/m, seen from 24° above" */
export function stateText(assessment: Assessment, answer: PointAnswer): string {
  const { density, depression } = answer;
  const pixels = density === null ? '' : `, ${density.toFixed(0)} px/m`;
  const above = `, seen from ${depression.toFixed(0)}° ${depression < 0 ? 'below' : 'above'}`.replace('-', '');
  const seen = answer.state === 'covered' || answer.state === 'too coarse';
  return `${shortText(assessment, answer)}${seen ? pixels + above : ''}`;
}

function shortText({ edition, scene }: Assessment, { state, band, hider, before }: PointAnswer): string {
  const by = hider === null ? '' : (scene.solids[hider]?.name ?? 'something');
  const gap = before === null ? '' : `, ${before.toFixed(1)} m before it`;
  switch (state) {
    case 'covered':
      return (edition.bands[band - 1]?.name ?? 'covered').toLowerCase();
    case 'too coarse':
      return 'too few pixels';
    case 'hidden':
      return `hidden by ${by}${gap}`;
    case 'screened':
      return `through leaves or mesh of ${by}${gap}`;
    case 'inside':
      return `inside ${by === '' ? 'a structure' : by}`;
    case 'out of frame':
    case 'too dark':
      return state;
  }
}
