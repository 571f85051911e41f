import { useId } from 'react';
import { useUnwritable } from './writable.ts';
import styles from './field.module.css';

export interface Choice<T extends string> {
  readonly value: T;
  readonly label: string;
}

interface SelectProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly Choice<T>[];
  readonly note?: string | null;
  /** `small` is set beside a number: how that was got. Its label is only spoken. */
  readonly look?: 'row' | 'small';
  /** Where it chooses what is shown, not what is in the plan, it works in a read-only tab too. */
  readonly viewing?: boolean;
  set(value: T): void;
}

/** One of a few, by the system's own list: it works with keys, touch and speech as people know it. */
export function Select<T extends string>({
  label,
  value,
  choices,
  note,
  look = 'row',
  viewing = false,
  set,
}: SelectProps<T>) {
  const id = useId();
  const readOnly = useUnwritable();
  const unwritable = viewing ? null : readOnly;
  return (
    <div className={styles.field} data-look={look}>
      <label className={look === 'small' ? styles.spoken : styles.label} htmlFor={id}>
        {label}
      </label>
      <span className={styles.box} data-select>
        <select
          id={id}
          className={styles.select}
          value={value}
          disabled={unwritable !== null}
          title={unwritable ?? undefined}
          onChange={(event) => {
            const chosen = choices.find((choice) => choice.value === event.currentTarget.value);
            if (chosen) set(chosen.value);
          }}
        >
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ))}
        </select>
      </span>
      {note && <p className={styles.note}>{note}</p>}
    </div>
  );
}
