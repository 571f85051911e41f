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
      <div className={styles.foot} role="group" aria-label="Result" ref={reachable}>
        {foot}
      </div>
    </div>
  );
}

/** It scrolls in a low window, so keys must reach it. */
const reachable = (foot: HTMLElement | null) => {
  if (foot) foot.tabIndex = 0;
};
