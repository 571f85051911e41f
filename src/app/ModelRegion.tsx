import { Suspense, lazy, useLayoutEffect, useRef } from 'react';
import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Commands } from '../editor/commands.ts';
import type { Editor } from '../editor/editor.ts';
import { Button } from '../fittings/Button.tsx';
import { Progress } from '../fittings/Progress.tsx';
import { Segmented } from '../fittings/Segmented.tsx';
import { CoverSwitch } from '../panels/CoverSwitch.tsx';
import { Credits } from '../panels/Credits.tsx';
import { DensityScale } from '../panels/DensityScale.tsx';
import { FirstRun } from '../panels/FirstRun.tsx';
import { NoticePlate } from '../panels/NoticePlate.tsx';
import { ProbeCard } from '../panels/ProbeCard.tsx';
import { Spoken } from '../panels/Spoken.tsx';
import { TargetChoice } from '../panels/TargetChoice.tsx';
import type { Desk, DeskStore } from './desk.ts';
import type { Openings } from './opening.ts';
import type { Tracing } from './pictures/tracing.ts';
import styles from './modelRegion.module.css';

// Fetched at once, while the plan is read and worked out.
const loading = import('../view3d/ModelView.tsx');
const ModelView = lazy(() => loading.then((loaded) => ({ default: loaded.ModelView })));

const PictureView = lazy(() =>
  import('./PictureView.tsx').then((loaded) => ({ default: loaded.PictureView })),
);

interface ModelRegionProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly desk: DeskStore;
  readonly openings: Openings;
  readonly tracing: Tracing;
  readonly commands: Commands;
}

/** The Model and what lies over it: what is asked for, the scale, what is here, and what was said. */
export function ModelRegion({ editor, answers, desk, openings, tracing, commands }: ModelRegionProps) {
  const empty = useStore(
    editor.store,
    ({ plan, tool }) =>
      tool === 'rest' &&
      plan.structureOrder.length === 0 &&
      plan.cameraOrder.length === 0 &&
      plan.pictureOrder.length === 0,
  );
  const opening = useStore(desk, (state) => state.opening);
  const asked = useStore(desk, (state) => state.look);
  const cameras = useStore(editor.store, ({ plan }) => plan.cameraOrder.length);
  const look = cameras === 0 ? 'model' : asked;
  return (
    <main className={styles.region} aria-label="Model" data-empty={empty} data-look={look}>
      {empty ? (
        <div className={styles.first}>
          <FirstRun
            draw={() => {
              commands.places()?.fromAbove();
              editor.hold('outline');
            }}
            trace={tracing.choose}
            pin={tracing.pin}
            shapes={() => desk.setState({ sheet: 'shapes', drawer: true, tab: 'setting' })}
            choose={openings.choose}
            sample={openings.sample}
          />
        </div>
      ) : (
        <Top>
          <TargetChoice editor={editor} />
          <CoverSwitch editor={editor} />
          <LookChoice editor={editor} desk={desk} />
        </Top>
      )}
      {look !== 'model' && (
        <div className={styles.picture}>
          <Suspense fallback={null}>
            <PictureView
              editor={editor}
              answers={answers}
              find={(point) => {
                desk.setState({ look: 'both' });
                commands.places()?.ask(point);
              }}
            />
          </Suspense>
        </div>
      )}
      <div className={styles.view} inert={look === 'picture'}>
        <Suspense fallback={null}>
          <ModelView editor={editor} answers={answers} commands={commands} bitmap={tracing.bitmap} />
        </Suspense>
        <Cover answers={answers} />
        <div className={styles.notices} data-over>
          {opening && (
            <div className={styles.opening}>
              <Progress label={`Opening ${opening.name}`} share={opening.share} doing={opening.doing} />
              <Button press={opening.cancel}>Cancel</Button>
            </div>
          )}
          <NoticePlate editor={editor} />
          <Spoken editor={editor} answers={answers} />
        </div>
      </div>
      {!empty && (
        <div className={styles.bottom} data-over>
          <ProbeCard answers={answers} />
          <DensityScale answers={answers} />
          <Credits editor={editor} />
        </div>
      )}
    </main>
  );
}

/** What stands in the Model's place, once there is a camera to look through. */
function LookChoice({ editor, desk }: Pick<ModelRegionProps, 'editor' | 'desk'>) {
  const look = useStore(desk, (state) => state.look);
  const cameras = useStore(editor.store, ({ plan }) => plan.cameraOrder.length);
  if (cameras === 0) return null;
  return (
    <Segmented<Desk['look']>
      label="What is shown"
      viewing
      value={look}
      choices={[
        { value: 'model', label: 'Model' },
        { value: 'picture', label: 'Camera’s view' },
        { value: 'both', label: 'Both' },
      ]}
      set={(next) => desk.setState({ look: next })}
    />
  );
}

/** What is asked for, over the Model; the tools begin below it, however many rows it takes. */
function Top({ children }: { children: ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = box.current;
    const region = element?.closest('main');
    if (!element || !region) return undefined;
    const measure = () => region.style.setProperty('--top-height', `${element.offsetHeight}px`);
    const resized = new ResizeObserver(measure);
    resized.observe(element);
    measure();
    return () => resized.disconnect();
  }, []);
  return (
    <div ref={box} className={styles.top} data-over>
      {children}
    </div>
  );
}

/** Over the Model until there is something to show: another plan's picture must not stand under this one's name. */
function Cover({ answers }: { answers: AnswersStore }) {
  const nothing = useStore(answers, (state) => state.assessment === null);
  const computing = useStore(answers, (state) => state.computing);
  if (!nothing) return null;
  return (
    <div className={styles.cover}>
      {computing && <Progress label="First coverage" share={computing.share} doing={computing.doing} />}
    </div>
  );
}
