import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Commands } from '../editor/commands.ts';
import type { Editor, EditorState } from '../editor/editor.ts';
import { nameOfSelected } from '../editor/recordsOf.ts';
import { Model } from './Model.ts';
import { modelCommands } from './modelCommands.ts';
import { keyPressed } from './navigate/keys.ts';
import { Pointers } from './navigate/Pointers.ts';
import { listenToWheel } from './navigate/wheel.ts';
import { SheetFrame } from './parts/SheetFrame.tsx';
import { NorthMark } from './parts/NorthMark.tsx';
import { ScaleBar } from './parts/ScaleBar.tsx';
import { SpokenHere } from './parts/SpokenHere.tsx';
import { StripRow } from './parts/StripRow.tsx';
import { ToolColumn } from './parts/ToolColumn.tsx';
import labelStyles from './labels/labels.module.css';
import styles from './modelView.module.css';
import partStyles from './parts/parts.module.css';

interface ModelViewProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly commands: Commands;
}

/** The Model: the site in space with what the cameras see of it, and the tools that change it there. */
export function ModelView({ editor, answers, commands }: ModelViewProps) {
  const root = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const layer = useRef<HTMLDivElement>(null);
  const [model, setModel] = useState<Model | null>(null);
  const name = useStore(editor.store, nameOf);
  const unit = useStore(editor.store, (state) => state.plan.settings.units);

  useEffect(() => {
    if (!root.current || !canvas.current || !layer.current) return undefined;
    const made = new Model(canvas.current, layer.current, editor, answers);
    const element = root.current;
    // An application takes keys, so it takes the focus.
    element.tabIndex = 0;
    const pointers = new Pointers(element, made);
    const stopWheel = listenToWheel(element, made);
    const keyed = (event: KeyboardEvent) => {
      if (event.target === element && keyPressed(event, made, pointers)) event.preventDefault();
    };
    element.addEventListener('keydown', keyed);
    const stopCursor = made.toolbox.store.subscribe(({ state }) => {
      element.style.cursor = state.cursor;
    });
    const stopCommands = commands.add(modelCommands(made));
    commands.setPlaces({ goTo: (point) => made.goTo(point), ask: (point) => made.ask(point) });
    setModel(made);
    return () => {
      element.removeEventListener('keydown', keyed);
      stopCommands();
      commands.setPlaces(null);
      stopWheel();
      stopCursor();
      pointers.dispose();
      made.dispose();
      setModel(null);
    };
  }, [editor, answers, commands]);

  return (
    <div className={styles['frame']}>
      <div ref={root} className={styles['model']} role="application" aria-label={name} data-model>
        <canvas ref={canvas} className={styles['canvas']} aria-hidden="true" />
        <div ref={layer} className={labelStyles['labels']} />
      </div>
      {model && (
        <>
          <SheetFrame view={model.view} />
          <div data-over>
            <ToolColumn model={model} />
          </div>
          <StripRow model={model} />
          <SpokenHere model={model} />
          <div className={partStyles['corner']} data-over>
            <ScaleBar view={model.view} unit={unit} />
            <NorthMark model={model} />
          </div>
        </>
      )}
    </div>
  );
}

/** What a screen reader calls the Model: plan and selection. */
function nameOf({ plan, selected }: EditorState): string {
  const thing = nameOfSelected(plan, selected);
  return `Model of ${plan.name}, ${thing === undefined ? 'nothing selected' : `${thing} selected`}`;
}
