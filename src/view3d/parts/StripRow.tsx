import { useStore } from 'zustand';
import { NumberField } from '../../fittings/NumberField.tsx';
import { angles, lengths } from '../../fittings/measure.ts';
import type { Model } from '../Model.ts';
import styles from '../modelView.module.css';

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
  return (
    <div
      className={styles['strip']}
      data-shown={strip !== null}
      data-trouble={strip?.trouble === true}
      onKeyDown={(event) => {
        if (event.key === 'Enter' && event.target instanceof HTMLInputElement && event.target.ariaInvalid !== 'true') toolbox.enter();
        if (event.key === 'Escape') toolbox.escape();
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
            drag: () => ({ to: (next) => toolbox.type(key, next), commit: () => undefined, cancel: () => undefined }),
          }}
        />
      ))}
    </div>
  );
}
