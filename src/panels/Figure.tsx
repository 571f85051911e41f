import styles from './sheet.module.css';

interface FigureProps {
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
}

/** A line of the sheet that is worked out and cannot be typed. */
export function Figure({ label, value, unit = '' }: FigureProps) {
  return (
    <p className={styles.figure}>
      <span>{label}</span>
      <span>
        <b>{value}</b> {unit}
      </span>
    </p>
  );
}
