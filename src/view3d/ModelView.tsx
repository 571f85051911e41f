import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Commands } from '../editor/commands.ts';
import type { Editor, EditorState } from '../editor/editor.ts';
import { followFirstSteps, type Stepping } from '../editor/stepping.ts';
import { nameOfSelected } from '../editor/recordsOf.ts';
import { afterFirst } from './afterFirst.ts';
import { Model } from './Model.ts';
import { firstStepsCommand, modelCommands } from './modelCommands.ts';
import { listenTo, type Listening } from './navigate/listen.ts';
import type { PictureBitmap } from './pictures/pictureTexture.ts';
import { placesOf } from './navigate/places.ts';
import { FirstSteps } from './parts/FirstSteps.tsx';
import { SheetFrame } from './parts/SheetFrame.tsx';
import { NorthMark } from './parts/NorthMark.tsx';
import { ScaleBar } from './parts/ScaleBar.tsx';
import { SpokenHere } from './parts/SpokenHere.tsx';
import { StripRow } from './parts/StripRow.tsx';
import { ToolColumn } from './parts/ToolColumn.tsx';
import drawingStyles from './drawing/drawing.module.css';
import labelStyles from './labels/labels.module.css';
import styles from './modelView.module.css';
import partStyles from './parts/parts.module.css';

const WorkParts = lazy(() => import('./WorkParts.tsx').then((loaded) => ({ default: loaded.WorkParts })));

interface ModelViewProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly commands: Commands;
  /** Gives the picture with these bytes; null where the device has none. */
  readonly bitmap: PictureBitmap;
  /** Has the Model show something else as well; answers how to stop. */
  readonly join?: (model: Model) => () => void;
}

/** What is there while the Model is. */
interface Made {
  readonly model: Model;
  readonly listening: Listening;
  readonly steps: Stepping;
}

/** The Model: the site in space with what the cameras see of it, and the tools that change it there. */
export function ModelView({ editor, answers, commands, bitmap, join }: ModelViewProps) {
  const root = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const layer = useRef<HTMLDivElement>(null);
  const [made, setMade] = useState<Made | null>(null);
  const [working, setWorking] = useState(false);
  const name = useStore(editor.store, nameOf);
  const unit = useStore(editor.store, (state) => state.plan.settings.units);

  useEffect(() => {
    if (!root.current || !canvas.current || !layer.current) return undefined;
    const model = new Model(canvas.current, layer.current, editor, answers, bitmap);
    // An application takes keys, so it takes the focus.
    root.current.tabIndex = 0;
    const listening = listenTo(root.current, model);
    const steps = followFirstSteps(editor, model.toolbox);
    const stopCommands = commands.add([...modelCommands(model), firstStepsCommand(model, steps)]);
    commands.setPlaces(placesOf(model));
    const leave = join?.(model);
    setMade({ model, listening, steps });
    return () => {
      leave?.();
      stopCommands();
      commands.setPlaces(null);
      listening.stop();
      steps.dispose();
      model.dispose();
      setMade(null);
    };
  }, [editor, answers, commands, bitmap, join]);
  useEffect(() => {
    if (!made) return undefined;
    return afterFirst(answers, () => {
      void made.model.toolbox.fetch().then(() => setWorking(true));
    });
  }, [answers, made]);

  return (
    <div className={styles['frame']}>
      <div ref={root} className={styles['model']} role="application" aria-label={name} data-model>
        <canvas ref={canvas} className={styles['canvas']} aria-hidden="true" />
        <div ref={layer} className={`${labelStyles['labels']} ${drawingStyles['drawing']}`} />
      </div>
      {made && (
        <>
          {/* First, so that Tab leads from the Model into it. */}
          <StripRow model={made.model} />
          <FirstSteps steps={made.steps} done={() => made.model.focus()} />
          <SheetFrame view={made.model.view} />
          <div data-over>
            <ToolColumn model={made.model} />
          </div>
          {working && (
            <Suspense fallback={null}>
              <WorkParts model={made.model} listening={made.listening} commands={commands} />
            </Suspense>
          )}
          <SpokenHere model={made.model} />
          <div className={partStyles['corner']} data-over>
            <ScaleBar view={made.model.view} unit={unit} />
            <NorthMark model={made.model} />
          </div>
        </>
      )}
    </div>
  );
}

/** What a screen reader calls the Model: plan and selection. */
function nameOf({ plan, selected, selection }: EditorState): string {
  const thing = selection.length > 1 ? `${selection.length} things` : nameOfSelected(plan, selected);
  return `Model of ${plan.name}, ${thing === undefined ? 'nothing selected' : `${thing} selected`}`;
}
