import type { ReactNode } from 'react';
import styles from './folded.module.css';

interface FoldedProps {
  readonly title: string;
  /** What matters of it, so that it need not be opened. */
  readonly told: string;
  readonly open?: boolean;
  readonly children: ReactNode;
}

/** A part of a sheet that is closed until it is wanted, with what matters of it on its first line. */
export function Folded({ title, told, open = false, children }: FoldedProps) {
  return (
    <details className={styles.folded} open={open}>
      <summary className={styles.summary}>
        <h3 className={styles.title}>{title}</h3>
        <span className={styles.told}>{told}</span>
      </summary>
      {children}
    </details>
  );
}
