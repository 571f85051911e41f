import { useRef } from 'react';
import type { KeyboardEvent, PointerEvent } from 'react';
import { useStore } from 'zustand';
import type { TrialStore } from '../../editor/trial/trial.ts';
import styles from './wipe.module.css';

/** A setting beside the divider: its letter, and what sets it apart in a few words. */
interface WipeSide {
  readonly letter: string;
  readonly words: string;
}

interface WipeProps {
  readonly trial: TrialStore;
  readonly left: WipeSide;
  readonly right: WipeSide;
}

/** The divider keeps so far from the edges, as a share of the width. */
const LEAST = 0.02;
const MOST = 0.98;

/** The divider over the Model: dragged by its knob, pressed on its track, or moved by arrow keys. It changes nothing of the plan. */
export function Wipe({ trial, left, right }: WipeProps) {
  const at = useStore(trial, (state) => state.at);
  const layer = useRef<HTMLDivElement>(null);

  const set = (next: number) => trial.setState({ placed: true, at: Math.min(MOST, Math.max(LEAST, next)) });

  const follow = (event: PointerEvent<HTMLElement>) => {
    const box = layer.current?.getBoundingClientRect();
    if (box && box.width > 0) set((event.clientX - box.left) / box.width);
  };

  const press = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    follow(event);
  };

  const keyed = (event: KeyboardEvent) => {
    const step = event.shiftKey ? 0.1 : 0.01;
    const next = new Map([
      ['ArrowLeft', at - step],
      ['ArrowDown', at - step],
      ['ArrowRight', at + step],
      ['ArrowUp', at + step],
      ['PageDown', at - 0.1],
      ['PageUp', at + 0.1],
      ['Home', LEAST],
      ['End', MOST],
    ]).get(event.key);
    if (next === undefined) return;
    event.preventDefault();
    set(next);
  };

  const share = Math.round(at * 100);
  return (
    <div ref={layer} className={styles.wipe} style={{ '--at': at }}>
      <div className={styles.line} />
      <div className={styles.sides} aria-hidden="true">
        <span className={styles.side} data-side="left">
          <span>{left.words}</span>
          <b>{left.letter}</b>
        </span>
        <span className={styles.side} data-side="right">
          <b>{right.letter}</b>
          <span>{right.words}</span>
        </span>
      </div>
      <div
        className={styles.knob}
        role="slider"
        tabIndex={0}
        aria-label="Divider between the two settings"
        aria-orientation="horizontal"
        aria-valuemin={2}
        aria-valuemax={98}
        aria-valuenow={share}
        aria-valuetext={`${left.letter} on the left ${share} %, ${right.letter} on the right`}
        onPointerDown={press}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId)) follow(event);
        }}
        onKeyDown={keyed}
      >
        <svg viewBox="0 0 28 28" width="28" height="28" aria-hidden="true">
          <circle cx="14" cy="14" r="12" />
          <path d="M11 9.5 6.5 14 11 18.5M17 9.5 21.5 14 17 18.5" />
        </svg>
      </div>
    </div>
  );
}
