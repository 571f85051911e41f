import type { ReactNode } from 'react';
import styles from './field.module.css';

/** Two numbers in one row under a common label: width × height. */
export function PairRow({ label, children }: { label: string; children: readonly [ReactNode, ReactNode] }) {
  return (
    <div className={styles.field} role="group" aria-label={label}>
      <span className={styles.label} aria-hidden>
        {label}
      </span>
      <span className={styles.pair}>
        {children[0]}
        <span aria-hidden>×</span>
        {children[1]}
      </span>
    </div>
  );
}
