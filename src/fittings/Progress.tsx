import styles from './progress.module.css';

/** How far a long job has come, in words and as a bar. */
export function Progress({ label, share, doing }: { label: string; share: number; doing: string }) {
  return (
    <div className={styles.progress}>
      <span>
        {doing} {Math.round(share * 100)} %
      </span>
      <progress className={styles.bar} aria-label={label} value={share} max={1} />
    </div>
  );
}
