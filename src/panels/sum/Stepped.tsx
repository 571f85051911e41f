import { useId } from 'react';
import { Minus, Plus } from 'lucide-react';
import type { Bounds, NumberEdit } from '../../fittings/edit.ts';
import { Button } from '../../fittings/Button.tsx';
import { stepped } from '../../fittings/fieldWords.ts';
import type { Measure } from '../../fittings/measure.ts';
import { NumberField } from '../../fittings/NumberField.tsx';
import styles from './sum.module.css';

interface SteppedProps {
  readonly label: string;
  readonly value: number;
  readonly measure: Measure;
  readonly bounds: Bounds;
  /** What a press on − or + changes. */
  readonly by: number;
  readonly note?: string | null;
  set(value: number): void;
}

/** A number that is typed, or stepped by two buttons for a thumb. */
export function Stepped({ label, value, measure, bounds, by, note = null, set }: SteppedProps) {
  const id = useId();
  const edit: NumberEdit = {
    set,
    step: set,
    drag: () => ({ to: set, commit: () => undefined, cancel: () => set(value) }),
  };
  const step = (steps: number) => set(stepped(value, steps, by, bounds));
  return (
    <div className={styles.stepped} role="group" aria-labelledby={id}>
      <span id={id} className={styles.spoken}>
        {label}
      </span>
      <NumberField label={label} value={value} measure={measure} bounds={bounds} edit={edit} note={note} />
      <span className={styles.steps}>
        <Button look="icon" label={`Less: ${label}`} press={() => step(-1)}>
          <Minus size={18} aria-hidden="true" />
        </Button>
        <Button look="icon" label={`More: ${label}`} press={() => step(1)}>
          <Plus size={18} aria-hidden="true" />
        </Button>
      </span>
    </div>
  );
}
