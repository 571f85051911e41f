import { useId, useRef } from 'react';
import type { StripChoice } from '../../editor/tools/chart.ts';
import type { Model } from '../Model.ts';
import { isToolKey } from '../typing/isToolKey.ts';
import styles from './strip.module.css';

interface StripChoicesProps {
  readonly model: Model;
  readonly choice: StripChoice;
}

/** One of a few, as a row of buttons of which one is on. Arrows choose in it; a press goes on to the number that follows. */
export function StripChoices({ model, choice: { key, label, options, chosen } }: StripChoicesProps) {
  const name = useId();
  const pressed = useRef(false);
  return (
    <div
      className={styles.choices}
      role="radiogroup"
      tabIndex={-1}
      aria-label={label}
      onPointerDown={() => {
        pressed.current = true;
      }}
      onKeyDown={(event) => {
        pressed.current = false;
        if (isToolKey(event)) {
          event.preventDefault();
          model.typing.leave();
          model.pressKey(event.key);
        }
        // The number that follows from a choice is typed without going to it first.
        if (/^[\d.(-]$/.test(event.key) && model.typing.begin(event.key)) event.preventDefault();
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        model.typing.leave();
      }}
    >
      {options.map((option) => (
        <label key={option.key}>
          <input
            type="radio"
            name={name}
            value={option.key}
            checked={option.key === chosen}
            onChange={() => model.typing.choose(key, option.key, pressed.current)}
          />
          <span>{option.label}</span>
        </label>
      ))}
    </div>
  );
}
