import { useId } from 'react';
import type { Choice } from './Select.tsx';
import { useUnwritable } from './writable.ts';
import styles from './segmented.module.css';

interface SegmentedProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly Choice<T>[];
  /** Where it chooses what is shown, not what is in the plan, it works in a read-only tab too. */
  readonly viewing?: boolean;
  set(value: T): void;
}

/** A row of buttons of which one is on. */
export function Segmented<T extends string>({
  label,
  value,
  choices,
  viewing = false,
  set,
}: SegmentedProps<T>) {
  const name = useId();
  const unwritable = useUnwritable();
  return (
    <fieldset className={styles.group} disabled={!viewing && unwritable !== null}>
      <legend className={styles.legend}>{label}</legend>
      {choices.map((choice) => (
        <label key={choice.value} className={styles.choice}>
          <input
            type="radio"
            className={styles.radio}
            name={name}
            value={choice.value}
            checked={choice.value === value}
            onChange={() => set(choice.value)}
          />
          <span className={styles.face}>{choice.label}</span>
        </label>
      ))}
    </fieldset>
  );
}
