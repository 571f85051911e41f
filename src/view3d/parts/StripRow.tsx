import { useEffect, useRef, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import type { Model } from '../Model.ts';
import { words } from '../../editor/tools/chart.ts';
import { wayWords } from '../navigate/ways.ts';
import { keepClear } from './keepClear.ts';
import { StripChoices } from './StripChoices.tsx';
import { StripField } from './StripField.tsx';
import styles from './strip.module.css';

interface StripRowProps {
  readonly model: Model;
}

/** The numbers that the work is changing, in words, those that may be typed, and what is still asked. */
export function StripRow({ model }: StripRowProps) {
  const { editor, toolbox } = model;
  const worked = useStore(toolbox.store, ({ state }) => state.strip);
  // With choices, or numbers that no pointer is drawing, the row is there to be pointed at.
  const asks = useStore(
    toolbox.store,
    ({ state: { strip, hover, cursor } }) =>
      (strip?.choices?.length ?? 0) > 0 ||
      ((strip?.fields.length ?? 0) > 0 && (hover === undefined || cursor !== 'crosshair')),
  );
  const way = useSyncExternalStore(model.view.subscribe, () => wayWords(model));
  const strip = worked ?? (way === null ? null : words(way));
  const unit = useStore(editor.store, (state) => state.plan.settings.units);
  const row = useRef<HTMLFormElement>(null);
  useEffect(() => (row.current ? keepClear(row.current, model) : undefined), [model]);
  return (
    <form
      ref={row}
      className={styles.strip}
      aria-label="What is being changed"
      data-shown={strip !== null}
      data-trouble={strip?.trouble === true}
      data-asks={asks}
      onSubmit={(event) => event.preventDefault()}
    >
      <span role="status">{strip?.text ?? ''}</span>
      {strip?.choices?.map((choice) => (
        <StripChoices key={choice.key} model={model} choice={choice} />
      ))}
      {strip?.fields.map((field) => (
        <StripField key={field.key} model={model} field={field} unit={unit} />
      ))}
    </form>
  );
}
