import { Check, Crosshair, Keyboard, Magnet, PenLine, Redo2, Undo2, type LucideIcon } from 'lucide-react';
import { useState } from 'react';
import { useStore } from 'zustand';
import type { Model } from '../Model.ts';
import type { PenRule } from '../navigate/PenRule.ts';
import { Keypad } from './Keypad.tsx';
import styles from './touch.module.css';

interface TouchBarProps {
  readonly model: Model;
  readonly pen: PenRule;
}

/** What keys do, for a finger or a pen with a tool in hand. */
export function TouchBar({ model, pen }: TouchBarProps) {
  const { editor, toolbox, pointer, hands, typing } = model;
  const by = useStore(pointer, (state) => state.by);
  const tool = useStore(editor.store, (state) => state.tool);
  const snapping = useStore(editor.store, (state) => state.snapping);
  const base = useStore(hands.base, (state) => state.asked);
  const pad = useStore(typing.store, (state) => state.pad);
  const asks = useStore(toolbox.store, ({ state }) => (state.strip?.fields.length ?? 0) > 0);
  const [fingers, setFingers] = useState(pen.fingersDraw);
  if (by === 'mouse' || (tool === 'rest' && !asks)) return null;
  const act = (label: string, Sign: LucideIcon, press: () => void, pressed?: boolean) => (
    <button
      key={label}
      type="button"
      aria-label={label}
      aria-pressed={pressed}
      // The field that is typed in keeps the focus.
      onPointerDown={(event) => event.preventDefault()}
      onClick={press}
    >
      <Sign size={20} aria-hidden="true" />
      <span>{label}</span>
    </button>
  );
  return (
    <div className={styles.touch} data-over>
      {pad && <Keypad model={model} />}
      <div className={styles.bar} role="toolbar" aria-label="Touch">
        {act('Undo', Undo2, () => {
          if (!toolbox.back()) editor.undo();
        })}
        {act('Redo', Redo2, () => editor.redo())}
        {act('Snap', Magnet, () => editor.snap(!snapping), snapping)}
        {act('From here', Crosshair, () => hands.base.setState({ asked: !base }), base)}
        {act('Type', Keyboard, () => typing.showPad(!pad), pad)}
        {pen.hasPen &&
          act(
            'Fingers draw',
            PenLine,
            () => {
              pen.letFingersDraw(!fingers);
              setFingers(!fingers);
            },
            fingers,
          )}
        {act('Done', Check, () => {
          if (!toolbox.enter()) editor.hold('rest');
        })}
      </div>
    </div>
  );
}
