import type { Model } from '../Model.ts';
import { arrowOf } from '../typing/Typing.ts';
import { takesCursor } from '../navigate/KeyCursor.ts';
import styles from './touch.module.css';

/** Rows of the pad: what is typed, or a key by its name. */
const ROWS: readonly (readonly string[])[] = [
  ['7', '8', '9', 'x', '<', 'Backspace'],
  ['4', '5', '6', '-', 'm', 'ArrowUp', 'Tab'],
  ['1', '2', '3', '/', 'cm', 'ArrowLeft', 'ArrowRight'],
  ['0', '.', "'", '"', 'mm', 'ArrowDown', ' ', 'Enter'],
];

const NAMES: Readonly<Record<string, readonly [sign: string, name: string]>> = {
  Backspace: ['⌫', 'Backspace'],
  ArrowUp: ['▲', 'Up'],
  ArrowDown: ['▼', 'Down'],
  ArrowLeft: ['◀', 'Left'],
  ArrowRight: ['▶', 'Right'],
  Tab: ['Tab', 'Tab'],
  Enter: ['Enter', 'Enter'],
  ' ': ['Space', 'Space'],
  x: ['×', 'by'],
  '-': ['−', 'minus'],
};

/** Numbers, units and arrows for fingers: the system's own would cover the work. */
export function Keypad({ model }: { readonly model: Model }) {
  return (
    <div className={styles.pad} role="group" aria-label="Type">
      {ROWS.map((row) => (
        <div key={row.join()}>
          {row.map((key) => (
            <button
              key={key}
              type="button"
              aria-label={NAMES[key]?.[1]}
              onPointerDown={(event) => event.preventDefault()}
              onClick={() => padPressed(model, key)}
            >
              {NAMES[key]?.[0] ?? key}
            </button>
          ))}
        </div>
      ))}
    </div>
  );
}

/** A key of the pad does what the key on a keyboard does. */
function padPressed(model: Model, key: string): void {
  const { typing, toolbox, cursor } = model;
  const { field, draft } = typing.store.getState();
  const way = arrowOf(key);
  if (way) {
    if (field !== null && draft !== null) typing.handOver(field, way);
    else if (takesCursor(toolbox.store.getState().state)) cursor.move(way, false);
  } else if (key === 'Enter') {
    if (field === null || !typing.handOver(field, 'enter')) toolbox.enter();
  } else if (key === 'Tab') {
    if (field !== null) typing.handOver(field, 'tab');
  } else if (key === ' ') toolbox.click(model.pointedNow());
  else if (key === 'Backspace') {
    if (field !== null && draft !== null) typing.write(field, draft.slice(0, -1));
    else toolbox.back();
  } else if (field !== null) typing.write(field, (draft ?? '') + key);
  else typing.begin(key);
}
