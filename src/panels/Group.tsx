import { useId } from 'react';
import type { ReactNode } from 'react';
import styles from './sheet.module.css';

/** A part of a sheet under its own small heading, ruled off from the next. */
export function Group({ title, children }: { title: string; children: ReactNode }) {
  const id = useId();
  return (
    <section className={styles.group} aria-labelledby={id}>
      <h3 id={id} className={styles.groupTitle}>
        {title}
      </h3>
      {children}
    </section>
  );
}
