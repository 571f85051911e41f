import { Cctv, Lightbulb, MousePointer2 } from 'lucide-react';
import { useStore } from 'zustand';
import type { Model } from '../Model.ts';
import styles from './parts.module.css';

interface ToolColumnProps {
  readonly model: Model;
}

/** The tools that may be in hand. */
export function ToolColumn({ model }: ToolColumnProps) {
  const { editor, toolbox } = model;
  const tool = useStore(editor.store, (state) => state.tool);
  const camera = () => {
    if (tool === 'camera') toolbox.again();
    else editor.hold('camera');
  };
  return (
    <div className={styles['tools']} role="toolbar" aria-label="Tools" aria-orientation="vertical">
      <button
        type="button"
        aria-label="Select and move"
        title="Select and move (Esc)"
        aria-pressed={tool === 'rest'}
        onClick={() => editor.hold('rest')}
      >
        <MousePointer2 size={17} aria-hidden="true" />
      </button>
      <button
        type="button"
        aria-label="Add a camera"
        title="Add a camera (C)"
        aria-pressed={tool === 'camera'}
        onClick={camera}
      >
        <Cctv size={18} aria-hidden="true" />
      </button>
      <button
        type="button"
        aria-label="Add a lamp"
        title="Add a lamp (U)"
        aria-pressed={tool === 'lamp'}
        onClick={() => editor.hold('lamp')}
      >
        <Lightbulb size={17} aria-hidden="true" />
      </button>
    </div>
  );
}
