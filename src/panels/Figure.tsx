import type { ReactNode } from 'react';
import styles from './sheet.module.css';

interface FigureProps {
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
  /** Set between label and value: how a size was got. */
  readonly beside?: ReactNode;
}

/** A line of the sheet that is worked out and cannot be typed. */
export function Figure({ label, value, unit = '', beside }: FigureProps) {
  return (
    <div className={styles.figure}>
      <span className={styles.what}>{label}</span>
      {beside}
      <span>
        <b>{value}</b> {unit}
      </span>
    </div>
  );
}
