import { useMemo, useRef, useState } from 'react';
import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import type { Assessment } from '../../assess/assessment.ts';
import { createShowSection } from '../../draw/section/shownSection.ts';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { SectionDrawn } from './SectionDrawn.tsx';
import { saveSection } from './saveSection.ts';
import { useBox } from './useBox.ts';
import styles from './section.module.css';

/** Below this width it is a phone's: one ruler, and a sentence how to use it, px. */
const NARROW = 600;

interface SectionStripProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  /** What stands at the end of its head: the choice of what the strip shows. */
  readonly beside?: ReactNode;
}

/** The cut along the selected camera's axis, below the Model; live with every drag. */
export function SectionStrip({ editor, answers, beside }: SectionStripProps) {
  const plan = useStore(editor.store, (state) => state.plan);
  const selected = useStore(editor.store, (state) => state.selected);
  const assessment = useStore(answers, (state) => state.assessment);
  const camera = selected?.kind === 'camera' ? plan.cameras[selected.id] : undefined;
  if (camera === undefined || assessment === null)
    return <Empty about={camera === undefined ? emptyWords(plan) : 'Working out coverage.'} />;
  return <CameraSection key={camera.id} {...{ editor, plan, camera, assessment, beside }} />;
}

const WHAT =
  'it is cut here from the side: mounting height, tilt, what is nearest and seen, and how far each band reaches.';

const emptyWords = ({ cameraOrder }: Plan): string =>
  `${cameraOrder.length === 0 ? 'Place' : 'Select'} a camera and ${WHAT}`;

function Empty({ about }: { about: string }) {
  return (
    <section className={styles.strip} data-empty="true" aria-label="Section">
      <div className={styles.head}>
        <h2 className={styles.title}>Section</h2>
        <span className={styles.about}>{about}</span>
      </div>
    </section>
  );
}

interface CameraSectionProps {
  readonly editor: Editor;
  readonly plan: Plan;
  readonly camera: PlanCamera;
  readonly assessment: Assessment;
  readonly beside: ReactNode;
}

function CameraSection({ editor, plan, camera, assessment, beside }: CameraSectionProps) {
  const [show] = useState(createShowSection);
  const person = useStore(editor.store, ({ standing }) => standing.ahead);
  const setPerson = (ahead: number) => editor.stand({ ahead, at: null });
  const box = useRef<HTMLDivElement>(null);
  const { width, height } = useBox(box);
  const section = useMemo(
    () => show(assessment, plan, camera.id, person),
    [show, assessment, plan, camera.id, person],
  );
  if (section === null)
    return (
      <Empty about={`${camera.name} is fixed to nothing that stands here, so there is no section of it.`} />
    );
  const narrow = width > 0 && width < NARROW;
  const along = `${camera.name}, along ${section.camera.pan.toFixed(0)}°`;
  return (
    <section className={styles.strip} data-narrow={narrow} aria-label="Section">
      <div className={styles.head}>
        <h2 className={styles.title}>Section</h2>
        <span className={styles.about}>{narrow ? along : `through ${along}, one scale both ways`}</span>
        <Button look="quiet" press={() => saveSection(editor, assessment, plan, section)}>
          Save as SVG
        </Button>
        {beside}
      </div>
      <div ref={box} className={styles.box}>
        {width > 0 && height > 0 && (
          <SectionDrawn
            {...{ editor, plan, camera, assessment, section, width, height, narrow, setPerson }}
          />
        )}
      </div>
      {narrow && (
        <p className={styles.hint}>
          Drag a round handle: height, tilt, or where the person stands. Arrow keys move it too.
        </p>
      )}
    </section>
  );
}
