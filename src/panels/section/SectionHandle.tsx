import { useRef } from 'react';
import type { KeyboardEvent, PointerEvent } from 'react';
import type { Vec2 } from '../../base/vector.ts';
import styles from './section.module.css';

/** What a handle does with the number that it holds. */
export interface Held {
  /** A press that may become a drag; each move tells how far the pointer has gone since, px. */
  begin(at: Vec2): { to(at: Vec2): void; commit(): void; cancel(): void } | null;
  /** Steps by keys: 1, or ten times that. */
  step(by: number): void;
  /** Back to what it was when the keys first came here. */
  restore(): void;
}

interface SectionHandleProps {
  readonly at: Vec2;
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly text: string;
  /** Keys by which the number rises; the others let it fall. */
  readonly rising: readonly string[];
  readonly held: Held;
  /** Turns a pointer's place into the drawing's. */
  place(event: PointerEvent): Vec2;
}

const ARROWS = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'];

/** A round handle of the Section: a drag is one step of history, arrows .01 m or .1°, Shift ten times that, Esc restores. */
export function SectionHandle({
  at,
  label,
  value,
  least,
  most,
  text,
  rising,
  held,
  place,
}: SectionHandleProps) {
  const drag = useRef<ReturnType<Held['begin']>>(null);
  const end = (keep: boolean) => {
    const now = drag.current;
    drag.current = null;
    if (keep) now?.commit();
    else now?.cancel();
  };
  const press = (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.focus();
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = held.begin(place(event));
  };
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Escape') {
      if (drag.current) end(false);
      else held.restore();
    } else if (ARROWS.includes(event.key)) {
      held.step((rising.includes(event.key) ? 1 : -1) * (event.shiftKey ? 10 : 1));
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <g
      className={styles.handle}
      data-held
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuenow={value}
      aria-valuemin={least}
      aria-valuemax={most}
      aria-valuetext={text}
      transform={`translate(${at[0]} ${at[1]})`}
      onPointerDown={press}
      onPointerMove={(event) => drag.current?.to(place(event))}
      onPointerUp={() => end(true)}
      onPointerCancel={() => end(false)}
      onLostPointerCapture={() => end(true)}
      onKeyDown={key}
    >
      <circle className={styles.reach} />
      <circle className={styles.ring} r={9.5} />
      <circle className={styles.round} r={6.5} />
      <circle className={styles.dot} r={1.8} />
    </g>
  );
}
