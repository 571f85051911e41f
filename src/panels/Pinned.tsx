import type { ReactNode } from 'react';
import styles from './sheet.module.css';

interface PinnedProps {
  readonly head: ReactNode;
  readonly foot: ReactNode;
  readonly children: ReactNode;
}

/** A sheet whose foot stays in view while the rest scrolls: the result beside the numbers that lead to it. */
export function Pinned({ head, foot, children }: PinnedProps) {
  return (
    <div className={styles.pinned}>
      {head}
      <div className={styles.scrolled}>{children}</div>
      <div className={styles.foot}>{foot}</div>
    </div>
  );
}
