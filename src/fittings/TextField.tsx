import { useId, useState } from 'react';
import { useUnwritable } from './writable.ts';
import styles from './field.module.css';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  /** The most characters that are kept. */
  readonly most: number;
  /** `title` stands alone in large letters, its label only spoken. */
  readonly look?: 'row' | 'title';
  set(value: string): void;
}

/** A name: Enter or leaving keeps it, Esc restores, an empty one is refused in words. */
export function TextField({ label, value, most, look = 'row', set }: TextFieldProps) {
  const id = useId();
  const unwritable = useUnwritable();
  const [draft, setDraft] = useState<string | null>(null);
  const [words, setWords] = useState<string | null>(null);

  const settle = () => {
    if (draft === null) return;
    const name = draft.trim();
    setDraft(null);
    setWords(name === '' ? `${label} cannot be empty. “${value}” is kept.` : null);
    if (name !== '' && name !== value) set(name);
  };

  return (
    <div className={styles.field} data-look={look}>
      <label className={look === 'title' ? styles.spoken : styles.label} htmlFor={id}>
        {label}
      </label>
      <span className={styles.box} data-wide title={unwritable ?? undefined}>
        <input
          id={id}
          className={styles.input}
          autoComplete="off"
          spellCheck={false}
          maxLength={most}
          value={draft ?? value}
          readOnly={unwritable !== null}
          aria-invalid={words !== null}
          aria-describedby={words === null ? undefined : `${id}-words`}
          onChange={(event) => {
            setDraft(event.currentTarget.value);
            setWords(null);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') settle();
            if (event.key !== 'Escape' || draft === null) return;
            event.stopPropagation();
            setDraft(null);
          }}
          onBlur={settle}
        />
      </span>
      {words !== null && (
        <p id={`${id}-words`} className={styles.words} role="alert">
          {words}
        </p>
      )}
    </div>
  );
}
