import type { ReactNode } from 'react';
import styles from './sheet.module.css';

/** The head of a sheet: sign, title, and which sheet it is. */
export function SheetHead({ sign, title, kind }: { sign: ReactNode; title: ReactNode; kind: ReactNode }) {
  return (
    <header className={styles.head}>
      {sign !== null && <span aria-hidden>{sign}</span>}
      <h2 className={styles.title}>{title}</h2>
      <span className={styles.kind}>{kind}</span>
    </header>
  );
}
