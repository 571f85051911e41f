import { useId, useRef } from 'react';
import type { Bounds, NumberDrag, NumberEdit } from './edit.ts';
import { useUnwritable } from './writable.ts';
import styles from './slider.module.css';

interface SliderProps {
  readonly label: string;
  readonly value: number;
  readonly bounds: Bounds;
  readonly step: number;
  /** What the value is called when it is read aloud: "4.0 mm". */
  readonly spoken: string;
  /** What stands at its two ends. */
  readonly ends: readonly [least: string, most: string];
  readonly edit: NumberEdit;
}

/** A number between two ends that is dragged, or stepped by the arrow keys; a drag is one step of history. */
export function Slider({ label, value, bounds, step, spoken, ends, edit }: SliderProps) {
  const id = useId();
  const unwritable = useUnwritable();
  const drag = useRef<NumberDrag | null>(null);
  const held = useRef(false);
  const letGo = (keep: boolean) => {
    held.current = false;
    if (keep) drag.current?.commit();
    else drag.current?.cancel();
    drag.current = null;
  };
  return (
    <div className={styles.slider}>
      <label className={styles.spoken} htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="range"
        className={styles.range}
        min={bounds.least}
        max={bounds.most}
        step={step}
        value={value}
        aria-valuetext={spoken}
        disabled={unwritable !== null}
        title={unwritable ?? undefined}
        onPointerDown={() => {
          held.current = true;
        }}
        onPointerUp={() => letGo(true)}
        onPointerCancel={() => letGo(false)}
        onBlur={() => letGo(true)}
        onKeyDown={(event) => {
          if (event.key !== 'Escape' || drag.current === null) return;
          event.stopPropagation();
          letGo(false);
        }}
        onChange={(event) => {
          const next = Math.min(bounds.most, Math.max(bounds.least, event.currentTarget.valueAsNumber));
          if (!held.current) return edit.step(next);
          drag.current ??= edit.drag();
          drag.current.to(next);
        }}
      />
      <span className={styles.ends} aria-hidden>
        <span>{ends[0]}</span>
        <span>{ends[1]}</span>
      </span>
    </div>
  );
}
