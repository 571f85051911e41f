import { useId, useLayoutEffect, useRef } from 'react';
import type { KeyboardEvent } from 'react';
import { useStore } from 'zustand';
import type { LengthUnit } from '../../base/length.ts';
import type { StripField as Field } from '../../editor/tools/chart.ts';
import { stepped } from '../../fittings/fieldWords.ts';
import { useLabelDrag } from '../../fittings/labelDrag.ts';
import type { Model } from '../Model.ts';
import { isToolKey } from '../typing/isToolKey.ts';
import { arrowOf, measureOf } from '../typing/Typing.ts';
import styles from './strip.module.css';

interface StripFieldProps {
  readonly model: Model;
  readonly field: Field;
  readonly unit: LengthUnit;
}

const BOUNDS = { least: -1e6, most: 1e6 };

/** One number of the strip: typed, stepped with − and +, or dragged on its label. */
export function StripField({ model, field, unit }: StripFieldProps) {
  const { key, label, value } = field;
  const { typing, toolbox } = model;
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const draft = useStore(typing.store, (state) => (state.field === key ? state.draft : null));
  const trouble = useStore(typing.store, (state) => (state.field === key ? state.trouble : null));
  const wanted = useStore(typing.store, (state) => (state.wanted?.key === key ? state.wanted.turn : 0));
  const pad = useStore(typing.store, (state) => state.pad);
  const measure = measureOf(field, unit);
  const shown = measure.show(value);
  const set = (next: number) => toolbox.type(key, next);
  const by = (steps: number) => set(stepped(value, steps, measure.step, BOUNDS));
  const drag = useLabelDrag(
    value,
    measure.step,
    BOUNDS,
    {
      set,
      step: set,
      drag: () => ({ to: set, commit: () => undefined, cancel: () => undefined }),
    },
    false,
  );

  useLayoutEffect(() => {
    if (wanted === 0 || !input.current) return;
    input.current.focus();
    // Digits from the Model stand there already; else the text is there to be typed over.
    if (typing.store.getState().draft === null) input.current.select();
  }, [wanted, typing]);

  const keyed = (event: KeyboardEvent<HTMLInputElement>) => {
    const way = arrowOf(event.key);
    const used = (() => {
      if (event.nativeEvent.isComposing) return false;
      if (event.key === 'Enter') return typing.handOver(key, 'enter');
      if (event.key === 'Tab') return typing.handOver(key, 'tab', event.shiftKey);
      if (event.key === 'Escape') {
        typing.leave();
        return true;
      }
      if (draft === null && isToolKey(event)) {
        typing.leave();
        model.pressKey(event.key);
        return true;
      }
      if (!way) return false;
      if (typing.store.getState().by === 'digits' && draft !== null) return typing.handOver(key, way);
      if (draft !== null || way === 'left' || way === 'right') return false;
      by((way === 'up' ? 1 : -1) * (event.shiftKey ? 10 : 1));
      return true;
    })();
    if (!used) return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <span className={styles.field}>
      <label htmlFor={id} {...drag}>
        {label}
      </label>
      <button type="button" tabIndex={-1} aria-label={`${label}: less`} onClick={() => by(-1)}>
        −
      </button>
      <span className={styles.box} data-trouble={trouble !== null}>
        <input
          ref={input}
          id={id}
          inputMode={pad ? 'none' : 'text'}
          autoComplete="off"
          spellCheck={false}
          size={Math.max(5, (draft ?? shown.text).length)}
          value={draft ?? shown.text}
          aria-invalid={trouble !== null}
          aria-describedby={trouble === null ? `${id}-unit` : `${id}-unit ${id}-trouble`}
          onFocus={(event) => {
            typing.entered(key);
            if (draft === null && wanted === 0) event.currentTarget.select();
          }}
          onChange={(event) => typing.write(key, event.currentTarget.value)}
          onKeyDown={keyed}
          onBlur={() => {
            // Another window has the focus for a while: what is typed waits.
            if (document.hasFocus()) typing.left(key);
          }}
        />
        <span id={`${id}-unit`} className={styles.unit}>
          {shown.unit}
        </span>
      </span>
      <button type="button" tabIndex={-1} aria-label={`${label}: more`} onClick={() => by(1)}>
        +
      </button>
      {trouble !== null && (
        <span id={`${id}-trouble`} className={styles.trouble} role="alert">
          {trouble}
        </span>
      )}
    </span>
  );
}
