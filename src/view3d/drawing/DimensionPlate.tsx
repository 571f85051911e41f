import { useId, useRef, useState } from 'react';
import type { LengthUnit } from '../../base/length.ts';
import type { Dimension } from '../../editor/dimensions/dimension.ts';
import { keptWords, typedNumber } from '../../fittings/fieldWords.ts';
import { measureOf } from '../../fittings/measureOf.ts';
import styles from './dimensions.module.css';

interface DimensionPlateProps {
  readonly dimension: Dimension;
  readonly unit: LengthUnit;
  readonly editing: boolean;
  /** In the order of Tab; the others are reached by arrows. */
  readonly first: boolean;
  edit(): void;
  /** Answers why not; null where it is taken. */
  set(value: number): string | null;
  /** What follows: the Model, the next one, or whatever has the focus already. Tells whether the focus was given on. */
  done(next: 'rest' | 'next' | 'previous' | 'left'): boolean;
  /** Something for the person to know once the field is gone. */
  say(words: string): void;
  /** The other end moves. */
  swap(): void;
}

const BOUNDS = { least: -1e6, most: 1e6 };

/** One number on the model: a button, and a field in its place while it is typed. */
export function DimensionPlate(props: DimensionPlateProps) {
  const { dimension, unit, editing, first, edit } = props;
  const { text, unit: sign } = measureOf(dimension.measure, unit).show(dimension.value);
  const shown = sign === '°' || sign === '' ? `${text}${sign}` : `${text} ${sign}`;
  if (editing) return <Field {...props} text={text} />;
  return (
    <button
      type="button"
      className={styles.plate}
      tabIndex={first ? 0 : -1}
      aria-label={`${dimension.label}, ${shown}`}
      onClick={edit}
    >
      {dimension.key.startsWith('edge') ? shown : `${dimension.label} ${shown}`}
    </button>
  );
}

function Field({
  dimension,
  unit,
  text,
  set,
  done,
  say,
  swap,
}: DimensionPlateProps & { readonly text: string }) {
  const id = useId();
  const measure = measureOf(dimension.measure, unit);
  const [draft, setDraft] = useState(text);
  const [trouble, setTrouble] = useState<string | null>(null);
  /** A key has said what becomes of the text; losing the focus says nothing more. */
  const over = useRef(false);
  /** Why what stands there is not taken; null where it is. */
  const refused = (): string | null => {
    // What still reads as shown is no change: the value may hold more figures than are shown.
    if (draft.trim() === text) return null;
    const typed = typedNumber(dimension.label, draft, measure, BOUNDS);
    return typed.ok ? set(typed.value) : typed.words;
  };
  const take = (): boolean => {
    const why = refused();
    setTrouble(why);
    return why === null;
  };
  const end = (next: 'rest' | 'next' | 'previous'): boolean => {
    over.current = true;
    return done(next);
  };
  const keyed = (event: React.KeyboardEvent<HTMLInputElement>) => {
    const used = (() => {
      switch (event.key) {
        case 'Enter':
          if (take()) end('rest');
          return true;
        case 'Tab':
          return !take() || end(event.shiftKey ? 'previous' : 'next');
        case 'Escape':
          return end('rest');
        case ';':
          swap();
          return true;
        default:
          return false;
      }
    })();
    if (!used) return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <span className={styles.field}>
      <input
        ref={(element) => {
          if (element && document.activeElement !== element) {
            element.focus();
            element.select();
          }
        }}
        aria-label={dimension.label}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : `${id}-trouble`}
        autoComplete="off"
        spellCheck={false}
        size={Math.max(5, draft.length)}
        value={draft}
        onChange={(event) => {
          setDraft(event.currentTarget.value);
          setTrouble(null);
        }}
        onKeyDown={keyed}
        onBlur={() => {
          if (!document.hasFocus() || over.current) return;
          const why = refused();
          if (why !== null) say(keptWords(why, dimension.value, measure));
          done('left');
        }}
      />
      {trouble !== null && (
        <span id={`${id}-trouble`} className={styles.trouble} role="alert">
          {trouble}
        </span>
      )}
    </span>
  );
}
