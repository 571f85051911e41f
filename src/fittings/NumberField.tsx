import { useId, useState } from 'react';
import type { KeyboardEvent, ReactNode } from 'react';
import type { Bounds, NumberEdit } from './edit.ts';
import { keptWords, stepped, typedNumber } from './fieldWords.ts';
import { useLabelDrag } from './labelDrag.ts';
import type { Measure } from './measure.ts';
import { useUnwritable } from './writable.ts';
import styles from './field.module.css';

interface NumberFieldProps {
  readonly label: string;
  readonly value: number;
  readonly measure: Measure;
  readonly bounds: Bounds;
  readonly edit: NumberEdit;
  /** Said below the field, where something about the value deserves it. */
  readonly note?: string | null;
  /** `half` is one of two in a row under a common label; its own is only spoken. */
  readonly look?: 'row' | 'half';
  /** Set between label and number: how a size was got. */
  readonly beside?: ReactNode;
}

/** A labelled number that is typed, stepped by the arrow keys, or dragged on its label. */
export function NumberField({
  label,
  value,
  measure,
  bounds,
  edit,
  note,
  look = 'row',
  beside,
}: NumberFieldProps) {
  const id = useId();
  const unwritable = useUnwritable();
  const [draft, setDraft] = useState<string | null>(null);
  const [words, setWords] = useState<string | null>(null);
  const shown = measure.show(value);
  const drag = useLabelDrag(value, measure.step, bounds, edit, unwritable !== null);

  const settle = (leaving: boolean) => {
    // Text that still reads as shown is no change: the value may hold more figures than are shown.
    if (draft === null || draft.trim() === shown.text) return setDraft(null);
    const typed = typedNumber(label, draft, measure, bounds);
    if (typed.ok) {
      setDraft(null);
      setWords(null);
      if (typed.value !== value) edit.set(typed.value);
      return;
    }
    setWords(leaving ? keptWords(typed.words, value, measure) : typed.words);
    if (leaving) setDraft(null);
  };

  const step = (steps: number) => {
    const typed = draft === null ? null : typedNumber(label, draft, measure, bounds);
    if (typed && !typed.ok) return setWords(typed.words);
    const from = typed?.value ?? value;
    const next = stepped(from, steps, measure.step, bounds);
    setDraft(null);
    setWords(next === from ? `${label} stops at ${shown.text} ${shown.unit}`.trim() + '.' : null);
    if (next !== value) edit.step(next);
  };

  const keyed = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') return settle(false);
    if (event.key === 'Escape' && (draft !== null || words !== null)) {
      event.stopPropagation();
      setDraft(null);
      return setWords(null);
    }
    if (unwritable !== null || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
    event.preventDefault();
    step((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1));
  };

  return (
    <div className={styles.field} data-look={look}>
      <label
        className={look === 'half' ? styles.spoken : styles.label}
        htmlFor={id}
        data-drag={unwritable === null}
        {...drag}
      >
        {label}
      </label>
      {beside}
      <span className={styles.box} title={unwritable ?? undefined}>
        <input
          id={id}
          className={styles.input}
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          value={draft ?? shown.text}
          readOnly={unwritable !== null}
          aria-invalid={words !== null}
          aria-describedby={words === null ? `${id}-unit` : `${id}-unit ${id}-words`}
          onFocus={(event) => event.currentTarget.select()}
          onChange={(event) => {
            setDraft(event.currentTarget.value);
            setWords(null);
          }}
          onKeyDown={keyed}
          onBlur={() => settle(true)}
        />
        <span id={`${id}-unit`} className={styles.unit}>
          {shown.unit}
        </span>
      </span>
      {words !== null && (
        <p id={`${id}-words`} className={styles.words} role="alert">
          {words}
        </p>
      )}
      {words === null && note && <p className={styles.note}>{note}</p>}
    </div>
  );
}
