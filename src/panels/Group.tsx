import { useId } from 'react';
import type { ReactNode } from 'react';
import styles from './sheet.module.css';

/**
 * A part of a sheet under its own small heading, ruled off from the next. @param answered it holds what was worked out, which
 * is marked while the plan is ahead of it
 */
export function Group({
  title,
  answered = false,
  children,
}: {
  title: string;
  answered?: boolean;
  children: ReactNode;
}) {
  const id = useId();
  return (
    <section className={styles.group} aria-labelledby={id} data-answered={answered || undefined}>
      <h3 id={id} className={styles.groupTitle}>
        {title}
      </h3>
      {children}
    </section>
  );
}
