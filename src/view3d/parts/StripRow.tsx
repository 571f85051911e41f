import { useLayoutEffect, useRef, type RefObject } from 'react';
import { useStore } from 'zustand';
import { NumberField } from '../../fittings/NumberField.tsx';
import { angles, lengths } from '../../fittings/measure.ts';
import type { Model } from '../Model.ts';
import type { Spot } from '../sheet.ts';
import { clearPlace } from './clearPlace.ts';
import { rectsOver } from './rectsOver.ts';
import styles from './parts.module.css';

interface StripRowProps {
  readonly model: Model;
}

const LENGTHS = { least: 0, most: 1000 };
const ANGLES = { least: -360, most: 360 };

/** The numbers that the work is changing, in words, and those that may be typed. */
export function StripRow({ model }: StripRowProps) {
  const { editor, toolbox } = model;
  const strip = useStore(toolbox.store, ({ state }) => state.strip);
  const unit = useStore(editor.store, (state) => state.plan.settings.units);
  const row = useRef<HTMLFormElement>(null);
  useClearPlace(row, model, strip);
  return (
    <form
      ref={row}
      className={styles['strip']}
      aria-label="What is being changed"
      data-shown={strip !== null}
      data-trouble={strip?.trouble === true}
      onSubmit={(event) => {
        event.preventDefault();
        toolbox.enter();
      }}
    >
      <span role="status">{strip?.text ?? ''}</span>
      {strip?.fields.map(({ key, label, value, measure }) => (
        <NumberField
          key={key}
          label={label}
          value={value}
          measure={measure === 'length' ? lengths(unit) : angles}
          bounds={measure === 'length' ? LENGTHS : ANGLES}
          edit={{
            set: (next) => toolbox.type(key, next),
            step: (next) => toolbox.type(key, next),
            drag: () => ({
              to: (next) => toolbox.type(key, next),
              commit: () => undefined,
              cancel: () => undefined,
            }),
          }}
        />
      ))}
      {/* Enter in a field sends the form only where it has a button. */}
      {strip !== null && strip.fields.length > 0 && <button type="submit" hidden aria-label="Fix it here" />}
    </form>
  );
}

/** Keeps the row clear of the pointer and of what else lies over the Model, while it shows something. */
function useClearPlace(row: RefObject<HTMLFormElement | null>, model: Model, shown: unknown): void {
  const last = useRef<Spot | null>(null);
  useLayoutEffect(() => {
    const element = row.current;
    const frame = element?.parentElement;
    if (!element || !frame || shown === null) return undefined;
    const place = () => {
      // Nothing moves under what is being typed.
      if (element.contains(document.activeElement)) return;
      const { view, pointer } = model;
      const size = { width: element.offsetWidth, height: element.offsetHeight };
      const over = rectsOver(frame);
      const spot = clearPlace(size, view, over, pointer.getState().spot, last.current);
      last.current = spot;
      element.style.transform = `translate(${Math.round(spot.x)}px, ${Math.round(spot.y)}px)`;
    };
    place();
    const resized = new ResizeObserver(place);
    resized.observe(element);
    resized.observe(frame);
    const stop = model.pointer.subscribe(place);
    return () => {
      resized.disconnect();
      stop();
    };
  }, [row, model, shown]);
}
