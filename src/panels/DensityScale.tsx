import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import styles from './densityScale.module.css';

/** What the tones of the ground mean: bands with the density at which each begins, and what has no tone. Without a camera there is nothing to tell. */
export function DensityScale({ answers }: { answers: AnswersStore }) {
  const edition = useStore(answers, ({ assessment }) => assessment?.edition ?? null);
  const none = useStore(answers, ({ assessment }) => (assessment?.cameras.length ?? 0) === 0);
  const night = useStore(answers, ({ assessment }) => (assessment?.scene.night ?? null) !== null);
  if (!edition || none) return null;
  const last = edition.bands.length - 1;
  return (
    <div className={styles.scale} role="group" aria-label={`Density scale, ${edition.name}`}>
      <ol className={styles.bands} style={{ '--count': edition.bands.length }}>
        {edition.bands.map((band, index) => (
          <li key={band.key} style={{ '--band': `var(--band-${index + 1})` }}>
            <span className={styles.name}>{band.name}</span>
            <i className={styles.tone} aria-hidden />
            <span className={styles.from}>
              {band.density}
              {index === last && ' px/m'}
            </span>
          </li>
        ))}
      </ol>
      <ul className={styles.others}>
        <li>
          <span className={styles.name}>Hidden</span>
          <i className={styles.hidden} aria-hidden />
        </li>
        <li>
          <span className={styles.name}>Through leaves or mesh</span>
          <i className={styles.screened} aria-hidden />
        </li>
        {night && (
          <li>
            <span className={styles.name}>Too dark</span>
            <i className={styles.dark} aria-hidden />
          </li>
        )}
        <li>
          <span className={styles.name}>Too few pixels</span>
          <i className={styles.bare} aria-hidden />
        </li>
      </ul>
    </div>
  );
}
