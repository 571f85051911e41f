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
      {/* It scrolls in a low window, so keys must reach it. */}
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex */}
      <div className={styles.foot} role="group" aria-label="Result" tabIndex={0}>
        {foot}
      </div>
    </div>
  );
}
