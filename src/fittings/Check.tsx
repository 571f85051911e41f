import { useUnwritable } from './writable.ts';
import styles from './check.module.css';

interface CheckProps {
  readonly label: string;
  readonly checked: boolean;
  set(checked: boolean): void;
}

/** A box to tick. */
export function Check({ label, checked, set }: CheckProps) {
  const unwritable = useUnwritable();
  return (
    <label className={styles.check} title={unwritable ?? undefined}>
      <input
        type="checkbox"
        checked={checked}
        disabled={unwritable !== null}
        onChange={(event) => set(event.currentTarget.checked)}
      />
      <span>{label}</span>
    </label>
  );
}
