import { useEffect, useRef, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import { NumberField } from '../../fittings/NumberField.tsx';
import { angles, lengths } from '../../fittings/measure.ts';
import type { Model } from '../Model.ts';
import { words } from '../../editor/tools/chart.ts';
import { wayWords } from '../navigate/ways.ts';
import { keepClear } from './keepClear.ts';
import styles from './parts.module.css';

interface StripRowProps {
  readonly model: Model;
}

const LENGTHS = { least: 0, most: 1000 };
const ANGLES = { least: -360, most: 360 };

/** The numbers that the work is changing, in words, and those that may be typed. */
export function StripRow({ model }: StripRowProps) {
  const { editor, toolbox } = model;
  const worked = useStore(toolbox.store, ({ state }) => state.strip);
  const way = useSyncExternalStore(model.view.subscribe, () => wayWords(model));
  const strip = worked ?? (way === null ? null : words(way));
  const unit = useStore(editor.store, (state) => state.plan.settings.units);
  const row = useRef<HTMLFormElement>(null);
  useEffect(() => (row.current ? keepClear(row.current, model) : undefined), [model]);
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
